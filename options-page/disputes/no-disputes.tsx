/** What a dispute holds, on an invented example, and the button that opens the first. */
export function NoDisputes() {
  return (
    <section class="stack loose">
      <h1>Disputes</h1>
      <p class="dispute-prose">
        When a sale is argued about, ours or another’s claim, everything about it stands in one place: until when it can
        be brought up by the venue’s own rule, what is still missing, what was said by whom, and how it ended.
      </p>
      <table class="ledger dispute-example">
        <caption class="small quiet">An invented example</caption>
        <tbody>
          <tr>
            <td>in 2 d 3 h</td>
            <td>A defect that was not said: bring the claim to the venue</td>
            <td class="number">$2,200 asked</td>
          </tr>
          <tr>
            <td colSpan={3}>Missing: a shop’s written estimate, the bill of sale</td>
          </tr>
        </tbody>
      </table>
      <p>
        <a class="button main" href="#/open-dispute">
          Open a dispute
        </a>
      </p>
    </section>
  );
}
