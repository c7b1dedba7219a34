import type { Cents } from '../money/cents.ts';
import type { PriceGrid } from './price-grid.ts';

/** Prices on the grid from `low` to `high`, both included, every one of which is acceptable. */
export interface AcceptedInterval {
  readonly low: Cents;
  readonly high: Cents;
}

/**
 * Whether a price may be paid. Between two neighboring breaks it must be a prefix: once a price is refused, every
 * higher one of the same piece is too.
 */
export type Accepts = (price: Cents) => boolean;

/**
 * All acceptable prices of a grid. The grid is cut where the cost of the car can fall as the price rises; inside a piece
 * each rule accepts a prefix, whose end is found by halving with the real rule, never by solving an equation, because
 * an equation takes the fee of the wrong band at an edge. Pieces that touch are joined.
 * @param breaks prices at which a new piece starts, in order
 * @param rules all must accept; a later one is only asked about what the earlier ones accept, so the dear one goes last
 * @param firstOnly stop at the end of the first interval
 */
export function acceptedIntervals(
  grid: PriceGrid,
  breaks: readonly Cents[],
  rules: readonly Accepts[],
  firstOnly = false,
): readonly AcceptedInterval[] {
  const found: AcceptedInterval[] = [];
  let low = -1;
  let end = -1;
  const close = () => {
    if (low >= 0) found.push({ low: grid.priceAt(low), high: grid.priceAt(end - 1) });
    low = -1;
  };
  let start = 0;
  for (let piece = 0; start < grid.size; piece++) {
    const edge = breaks[piece];
    const stop = edge === undefined ? grid.size : grid.indexFrom(edge);
    // Two edges between the same two prices of the grid leave no piece between them.
    if (stop === start) continue;
    let prefix = stop;
    for (const accepts of rules) prefix = prefixEnd(grid, start, prefix, accepts);
    if (prefix > start) {
      if (end !== start || low < 0) {
        close();
        low = start;
      }
      end = prefix;
    }
    if (firstOnly && low >= 0 && end < stop) break;
    start = stop;
  }
  close();
  return found;
}

/** The index after the last accepted one of [start, end); `start` when none is accepted. */
function prefixEnd(grid: PriceGrid, start: number, end: number, accepts: Accepts): number {
  if (start === end || !accepts(grid.priceAt(start))) return start;
  if (accepts(grid.priceAt(end - 1))) return end;
  let yes = start;
  let no = end - 1;
  while (no - yes > 1) {
    const middle = Math.floor((yes + no) / 2);
    if (accepts(grid.priceAt(middle))) yes = middle;
    else no = middle;
  }
  return no;
}
