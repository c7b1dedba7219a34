import { formatMoney } from '../../src/domain/money/format-money.ts';
import { sayEnd } from '../../src/domain/sale/result-words.ts';
import { sayDate } from '../../src/domain/time/say-time.ts';
import type { ResultRow } from '../../src/views/results/result-row.ts';
import { sayReview } from '../../src/views/results/review-words.ts';

/** More rows than this are no sheet that anyone reads. */
const MOST = 1000;

/** The list as it is printed: every row of the view, because those out of sight do not exist on the screen. */
export function PrintedResults({ rows }: { rows: readonly ResultRow[] }) {
  return (
    <table class="ledger printed-results">
      <caption class="visually-hidden">The results</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col">Car</th>
          <th scope="col">Venue</th>
          <th scope="col">Ended</th>
          <th scope="col" class="number">
            Our max bid
          </th>
          <th scope="col">Against our max</th>
        </tr>
      </thead>
      <tbody>
        {rows.slice(0, MOST).map((row) => (
          <tr key={row.lot.id}>
            <td>{sayDate(row.date)}</td>
            <td>{row.title}</td>
            <td>{row.venue}</td>
            <td>{sayEnd(row.result, row.canceled)}</td>
            <td class="number">{typeof row.maxBid === 'number' ? formatMoney(row.maxBid) : '—'}</td>
            <td>{sayReview(row)}</td>
          </tr>
        ))}
      </tbody>
      {rows.length > MOST && (
        <tfoot>
          <tr>
            <td colSpan={6}>
              The first {MOST.toLocaleString('en-US')} of {rows.length.toLocaleString('en-US')}: choose a week or a
              venue for the rest.
            </td>
          </tr>
        </tfoot>
      )}
    </table>
  );
}
