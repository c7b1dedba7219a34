import { Ledger } from '../../../src/ui/tables/ledger.tsx';

const EXAMPLE = [
  { what: 'Name', is: 'Saltgrass, west yard' },
  { what: 'Time zone', is: 'America/Phoenix: an hour behind Idaho in summer, the same in winter' },
  { what: 'Fees paid there', is: 'Saltgrass buy fees' },
  { what: 'Bid increments', is: '$50 up to $10,000, then $100' },
  { what: 'Transport', is: '930 miles at $0.85, at least $350: $790.50' },
];

/** What a venue is, on an invented one, and the button that makes the first. */
export function NoVenues({ onAdd }: { onAdd: () => void }) {
  return (
    <section class="stack loose">
      <Ledger
        class="setup-table"
        caption="A made-up example"
        captionClass="small quiet"
        rows={EXAMPLE}
        rowKey={({ what }) => what}
        columns={[
          { label: '', heads: true, cell: ({ what }) => what },
          { label: '', cell: ({ is }) => is },
        ]}
      />
      <p data-focus="add">
        <button type="button" class="main" onClick={onAdd}>
          Add a venue
        </button>
      </p>
    </section>
  );
}
