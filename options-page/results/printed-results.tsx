import { formatMoney } from '../../src/domain/money/format-money.ts';
import { sayEnd } from '../../src/domain/sale/result-words.ts';
import { sayDate } from '../../src/domain/time/say-time.ts';
import { Ledger } from '../../src/ui/tables/ledger.tsx';
import type { ResultRow } from '../../src/views/results/result-row.ts';
import { sayReview } from '../../src/views/results/review-words.ts';

/** More rows than this are no sheet that anyone reads. */
const MOST = 1000;

/** The list as it is printed: every row of the view, because those out of sight do not exist on the screen. */
export function PrintedResults({ rows }: { rows: readonly ResultRow[] }) {
  return (
    <Ledger
      class="printed-results"
      caption="The results"
      captionClass="visually-hidden"
      rows={rows.slice(0, MOST)}
      rowKey={({ lot }) => lot.id}
      columns={[
        { label: 'Day', cell: ({ date }) => sayDate(date) },
        { label: 'Car', cell: ({ title }) => title },
        { label: 'Venue', cell: ({ venue }) => venue },
        { label: 'Ended', cell: ({ result, canceled }) => sayEnd(result, canceled) },
        {
          label: 'Our max bid',
          number: true,
          cell: ({ maxBid }) => (typeof maxBid === 'number' ? formatMoney(maxBid) : '—'),
        },
        { label: 'Against our max', cell: (row) => sayReview(row) },
      ]}
      foot={
        rows.length > MOST && (
          <tr>
            <td colSpan={6}>
              The first {MOST.toLocaleString('en-US')} of {rows.length.toLocaleString('en-US')}: choose a week or a
              venue for the rest.
            </td>
          </tr>
        )
      }
    />
  );
}
