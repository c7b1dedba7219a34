import type { Cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import './tornado.css';

/** One input over its range, and what the max bid is at either end. */
export interface TornadoRow {
  readonly key: string;
  readonly label: string;
  /** The range in words. */
  readonly span: string;
  /** Null where no price pays. */
  readonly low: Cents | null;
  readonly high: Cents | null;
}

/** Each input moved over its range with all others left as they are; one line is the max bid as it stands. */
export function Tornado({ rows, maxBid }: { rows: readonly TornadoRow[]; maxBid: Cents }) {
  const ends = rows.flatMap(({ low, high }) => [low ?? 0, high ?? 0]);
  const least = Math.min(maxBid, ...ends);
  const most = Math.max(maxBid, ...ends);
  const place = (amount: number) => `${((amount - least) / (most - least || 1)) * 100}%`;
  const gap = (from: number, to: number) => `${((to - from) / (most - least || 1)) * 100}%`;
  return (
    <figure>
      <ul class="tornado">
        {rows.map(({ key, label, span, low, high }) => (
          <li key={key} class="tornado-row">
            <span>
              {label}
              <span class="quiet small"> {span}</span>
            </span>
            <span class="number">{boundWords(low)}</span>
            <span class="tornado-track" aria-hidden="true">
              <span class="tornado-bar" style={{ left: place(low ?? 0), width: gap(low ?? 0, high ?? 0) }} />
              <span class="tornado-now" style={{ left: place(maxBid) }} />
            </span>
            <span class="number tornado-high">{boundWords(high)}</span>
          </li>
        ))}
      </ul>
      <figcaption class="small quiet">
        The max bid when one input moves to either end of its range and the rest stay. The line is the max bid of{' '}
        {formatMoney(maxBid)}.
      </figcaption>
    </figure>
  );
}

const boundWords = (bid: Cents | null): string => (bid === null ? 'no price' : formatMoney(bid));
