/** What a dispute holds, on an invented example, and the button that opens the first. */
export function NoDisputes() {
  return (
    <section class="stack loose">
      <h1>Disputes</h1>
      <p class="dispute-prose">
        When a sale is in dispute, by us or against us, everything about it is in one place: the deadline by the venue’s
        own rule, what is still missing, who said what, and the outcome.
      </p>
      <table class="ledger dispute-example">
        <caption class="small quiet">A made-up example</caption>
        <tbody>
          <tr>
            <td>in 2 days 3 h</td>
            <td>Undisclosed defect: file the claim with the venue</td>
            <td class="number">$2,200 claimed</td>
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
