/** What a fee schedule is, on an invented one, and the button that makes the first. */
export function NoFees({ onAdd }: { onAdd: () => void }) {
  return (
    <section class="stack loose">
      <table class="ledger setup-table">
        <caption class="small quiet">A made-up example: the buy fee of Saltgrass, $270 on $9,000</caption>
        <thead>
          <tr>
            <th scope="col">Hammer price</th>
            <th scope="col" class="number">
              Flat
            </th>
            <th scope="col" class="number">
              Percent
            </th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>$0 to $4,999.99</td>
            <td class="number">$200</td>
            <td />
          </tr>
          <tr>
            <td>$5,000 to $14,999.99</td>
            <td />
            <td class="number">3%</td>
          </tr>
          <tr>
            <td>$15,000 and up</td>
            <td class="number">$475</td>
            <td />
          </tr>
        </tbody>
      </table>
      <p class="setup-prose">You can paste fee bands from a spreadsheet, a web page or a PDF instead of typing them.</p>
      <p data-focus="add">
        <button type="button" class="main" onClick={onAdd}>
          Add a fee schedule
        </button>
      </p>
    </section>
  );
}
