import { Ledger } from '../../../src/ui/tables/ledger.tsx';

const EXAMPLE = [
  { hammer: '$0 to $4,999.99', flat: '$200', percent: '' },
  { hammer: '$5,000 to $14,999.99', flat: '', percent: '3%' },
  { hammer: '$15,000 and up', flat: '$475', percent: '' },
];

/** What a fee schedule is, on an invented one, and the button that makes the first. */
export function NoFees({ onAdd }: { onAdd: () => void }) {
  return (
    <section class="stack loose">
      <Ledger
        class="setup-table"
        caption="A made-up example: the buy fee of Saltgrass, $270 on $9,000"
        captionClass="small quiet"
        rows={EXAMPLE}
        rowKey={({ hammer }) => hammer}
        columns={[
          { label: 'Hammer price', cell: ({ hammer }) => hammer },
          { label: 'Flat', number: true, cell: ({ flat }) => flat },
          { label: 'Percent', number: true, cell: ({ percent }) => percent },
        ]}
      />
      <p class="setup-prose">You can paste fee bands from a spreadsheet, a web page or a PDF instead of typing them.</p>
      <p data-focus="add">
        <button type="button" class="main" onClick={onAdd}>
          Add a fee schedule
        </button>
      </p>
    </section>
  );
}
