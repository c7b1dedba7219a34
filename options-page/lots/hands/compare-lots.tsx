import type { ComponentChildren } from 'preact';
import { lotName } from '../../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import type { RowWords } from '../../../src/views/lots/row-words.ts';

interface CompareLotsProps {
  readonly lots: readonly LotState[];
  readonly wordsOf: (lot: LotState) => RowWords;
  readonly onBack: () => void;
}

interface Line {
  readonly label: string;
  readonly of: (row: RowWords, lot: LotState) => ComponentChildren;
}

const LINES: readonly Line[] = [
  { label: 'Max bid', of: ({ maxBid }) => <span class="figure">{maxBid.words}</span> },
  { label: 'Price now', of: ({ price }) => price ?? 'no price' },
  { label: 'Headroom', of: ({ headroom }) => headroom && `${headroom.words}${headroom.past ? ' over max' : ''}` },
  { label: 'Bid', of: ({ bid }) => bid },
  { label: 'Closes (store time)', of: ({ close }) => close?.when ?? 'no close' },
  { label: 'Miles', of: (_, { facts }) => facts.miles?.toLocaleString('en-US') },
  { label: 'Retail, likely', of: (_, { facts }) => facts.retail && formatMoney(facts.retail.likely) },
  { label: 'Recon', of: (_, { facts }) => reconWords(facts.recon) },
  { label: 'Venue', of: (_, { facts }) => facts.venueName ?? facts.venueId },
  { label: 'Location', of: (_, { facts }) => facts.location },
  { label: 'Notes', of: (_, { facts }) => facts.notes },
];

/** A few lots side by side: one column each, the same figures as on their rows. */
export function CompareLots({ lots, wordsOf, onBack }: CompareLotsProps) {
  const columns = lots.map((lot) => ({ lot, row: wordsOf(lot) }));
  return (
    <section class="stack compare" aria-labelledby="compare-title">
      <div class="row">
        <button type="button" class="no-print" onClick={onBack}>
          Back to the list
        </button>
        <h2 id="compare-title">Compare {lots.length} lots</h2>
      </div>
      <ScrollX label="Lots side by side">
        <table class="ledger">
          <thead>
            <tr>
              <td />
              {columns.map(({ lot }) => (
                <th key={lot.id} scope="col">
                  <a href={`#/lot/${lot.id}`}>{lotName(lot.facts)}</a>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {LINES.map(({ label, of }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                {columns.map(({ lot, row }) => (
                  <td key={lot.id}>{of(row, lot) ?? '—'}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
    </section>
  );
}

const reconWords = (lines: LotState['facts']['recon']): ComponentChildren =>
  lines?.map(({ label, amount }, index) => (
    <div key={index}>
      {label} {formatMoney(amount.likely)}
    </div>
  ));
