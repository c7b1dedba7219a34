import { DEMO_HREF } from '../../src/ui/demo-mode.ts';

interface EmptyListProps {
  readonly setupKept: boolean;
}

/** An empty list teaches: what one lot needs, on a small worked example, and the one button that starts. */
export function EmptyList({ setupKept }: EmptyListProps) {
  return (
    <section class="stack loose empty-list">
      <div class="stack">
        <h1>No lots yet</h1>
        <p>
          Add the lots you are looking at, and each one gets its max bid: the most you can pay and still make the deal
          worth doing.
        </p>
      </div>
      <table class="ledger empty-example">
        <caption class="quiet small">An example, with round figures</caption>
        <tbody>
          <tr>
            <td>Expected retail</td>
            <td class="number">$18,000</td>
          </tr>
          <tr>
            <td>less recon, transport, buy fees and holding it</td>
            <td class="number">−$3,250</td>
          </tr>
          <tr>
            <td>less the profit that makes it worth doing</td>
            <td class="number">−$1,500</td>
          </tr>
          <tr class="total">
            <td>Max bid: stop here</td>
            <td class="number figure">$13,250</td>
          </tr>
        </tbody>
      </table>
      <div class="row">
        <a class="button main" href="#/add">
          Add lots
        </a>
        {!setupKept && (
          <a class="button" href="#/start">
            Set up the store and its fees
          </a>
        )}
        <a class="button plain" href={DEMO_HREF}>
          Look around with the demo
        </a>
      </div>
    </section>
  );
}
