/** What a venue is, on an invented one, and the button that makes the first. */
export function NoVenues({ onAdd }: { onAdd: () => void }) {
  return (
    <section class="stack loose">
      <table class="ledger setup-table">
        <caption class="small quiet">A made-up example</caption>
        <tbody>
          <tr>
            <th scope="row">Name</th>
            <td>Saltgrass, west yard</td>
          </tr>
          <tr>
            <th scope="row">Time zone</th>
            <td>America/Phoenix: an hour behind Idaho in summer, the same in winter</td>
          </tr>
          <tr>
            <th scope="row">Fees paid there</th>
            <td>Saltgrass buy fees</td>
          </tr>
          <tr>
            <th scope="row">Bid increments</th>
            <td>$50 up to $10,000, then $100</td>
          </tr>
          <tr>
            <th scope="row">Transport</th>
            <td>930 miles at $0.85, at least $350: $790.50</td>
          </tr>
        </tbody>
      </table>
      <p data-focus="add">
        <button type="button" class="main" onClick={onAdd}>
          Add a venue
        </button>
      </p>
    </section>
  );
}
