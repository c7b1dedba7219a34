import { Ledger } from '../../src/ui/tables/ledger.tsx';
import { PurseForm } from './purse-form.tsx';

const EXAMPLE = [
  {
    car: '2021 work van, closes 11:05',
    max: '$9,800',
    bid: '$9,350',
    why: 'The $11,900 it ties up is worth about $1,050 in the 61 lots still to come.',
  },
  { car: '2019 cargo van, closes 11:30', max: '$7,400', bid: '$7,400', why: 'The purse does not hold it back.' },
  {
    car: '2020 box truck, closes 12:05',
    max: '$15,200',
    bid: 'leave out',
    why: 'Its cash earns more in the lots after it.',
  },
];

/** What a plan is, on an invented example, and the one figure that it needs. */
export function NoPurse() {
  return (
    <section class="stack loose plan">
      <h1>Plan</h1>
      <p class="plan-prose">
        Most bids lose, so you bid on many lots with cash for few. Enter the cash, and each lot gets a planned bid: your
        max bid, or less where the cash is worth more in a lot that closes later. Bidding on more lots, each a little
        lower, mostly earns more than bidding on your best few.
      </p>
      <Ledger
        caption="A made-up example"
        captionClass="small quiet"
        rows={EXAMPLE}
        rowKey={({ car }) => car}
        columns={[
          { label: 'Car', cell: ({ car }) => car },
          { label: 'Max bid', number: true, cell: ({ max }) => max },
          { label: 'Planned bid', number: true, cell: ({ bid }) => <span class="strong">{bid}</span> },
          { label: 'Why', cell: ({ why }) => why },
        ]}
      />
      <section class="panel stack" aria-label="Purse">
        <h2>Your purse</h2>
        <PurseForm purse={undefined} />
      </section>
    </section>
  );
}
