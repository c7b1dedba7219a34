import { changeOf, type Effect, type MovedBid } from '../../../src/domain/learn/corrections/effect.ts';
import { type Cents, roundedCents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { Ledger, type LedgerColumn } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';

const SHOWN = 8;

const bid = (amount: Cents | null): string => (amount === null ? 'No bid' : formatMoney(amount, { cents: 'never' }));
/** "up $120", "down $45". */
export const moveWords = (amount: number): string =>
  `${amount > 0 ? 'up' : 'down'} ${formatMoney(roundedCents(Math.abs(amount)), { cents: 'never' })}`;

const COLUMNS: readonly LedgerColumn<MovedBid>[] = [
  { label: 'Lot', heads: true, cell: ({ lot, title }) => <a href={`#/lot/${lot}`}>{title}</a> },
  { label: 'Max bid now', number: true, cell: ({ before }) => bid(before) },
  { label: 'Then', number: true, cell: ({ after }) => bid(after) },
  { label: 'Change', number: true, cell: (one) => moveWords(changeOf(one)) },
];

/** What a switch does to the max bids of the open lots. */
export function EffectPart({ effect }: { effect: Effect }) {
  const { lots, moved, average } = effect;
  if (lots === 0) return <p>No open lot has a max bid now, so there is nothing to move yet.</p>;
  return (
    <div class="stack">
      <p>
        {moved.length === 0
          ? `None of the ${lots} open max bids would move.`
          : `${moved.length} of ${lots} open max bids would move, ${moveWords(average)} on average over all of them.`}
      </p>
      {moved.length > 0 && (
        <ScrollX label="Max bids that would move">
          <Ledger columns={COLUMNS} rows={moved.slice(0, SHOWN)} rowKey={({ lot }) => lot} />
        </ScrollX>
      )}
      {moved.length > SHOWN && <p class="quiet small">Those that move most. {moved.length - SHOWN} more move less.</p>}
    </div>
  );
}
