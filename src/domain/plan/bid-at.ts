import type { Cents } from '../money/cents.ts';
import type { PricePoints } from './price-points.ts';
import { indexOf, type Space, type State, UNPAYABLE } from './space.ts';
import type { Bidding, Cells } from './stage.ts';

/** What stands against going one price higher. */
export type Against =
  | { readonly is: 'nothing' }
  | { readonly is: 'short'; readonly of: 'cash' | 'line' | 'places' }
  /** Lots that close with it need the money too. */
  | { readonly is: 'others' }
  /** Its money is held for another lot. */
  | { readonly is: 'held' }
  /** What the money and the place are worth in the lots still to come, more than the profit; whole cents. */
  | { readonly is: 'worth'; readonly tied: number; readonly worth: number };

export interface Bid {
  /** Number of the price point bid up to; -1 for no bid. */
  readonly at: number;
  readonly against: Against;
  /** What it would be if nothing bound us; absent where nothing does. */
  readonly free?: number;
}

/** What a lot's price points are weighed with: the values after it, and what is left before it. */
export interface Standpoint {
  readonly next: Float64Array;
  readonly space: Space;
  readonly cells: Cells;
  readonly state: State;
}

/** The bid for one lot with the money and places left. Money is counted up to whole cells, so a bid never costs more than there is. */
export const bidAt = (bidding: Bidding, from: Standpoint): Bid => bidBy(bidding, gainsAt(bidding.points, from));

/** What winning at each price point gains. */
export const gainsAt = (points: PricePoints, from: Standpoint): readonly Gain[] =>
  points.prices.map((_, j) => gainAt(points, j, from));

/** The bid by what each price gains. */
export function bidBy(bidding: Bidding, gains: readonly Gain[]): Bid {
  const at = chosen(bidding, gains);
  const against = againstOf(gains[at + 1]);
  return bidding.bound < 0 ? { at, against } : { at, against, free: chosen({ ...bidding, bound: -1 }, gains) };
}

/** What stands against the price after a bid. */
export function againstAt(points: PricePoints, at: number, from: Standpoint): Against {
  return againstOf(at + 1 < points.prices.length ? gainAt(points, at + 1, from) : undefined);
}

function againstOf(above: Gain | undefined): Against {
  if (above === undefined) return { is: 'nothing' };
  if (above.short !== undefined) return { is: 'short', of: above.short };
  if (above.worth > -UNPAYABLE) return { is: 'held' };
  return { is: 'worth', tied: above.tied, worth: above.worth };
}

export interface Gain {
  /** Profit less what its money and place are worth later; undefined in `short`'s case. */
  readonly gain: number;
  readonly worth: number;
  readonly tied: number;
  readonly short?: 'cash' | 'line' | 'places';
}

/** By the better way to pay; of what is missing for every way, the first. */
export function gainAt(points: PricePoints, j: number, { next, space, cells, state }: Standpoint): Gain {
  if (space.places !== null && state.places < 1) return NO_PLACE;
  const cur = next[indexOf(space, state)] as number;
  let best: Gain | undefined;
  let short: 'cash' | 'line' | undefined;
  for (const way of points.ways) {
    const cash = state.cash - Math.ceil((way.cash[j] as number) / cells.cash);
    const line = state.line - Math.ceil((way.line[j] as number) / cells.line);
    if (cash < 0 || line < 0) {
      short ??= cash < 0 ? 'cash' : 'line';
      continue;
    }
    const worth = cur - (next[indexOf(space, { cash, line, places: state.places - 1 })] as number);
    const gain = (way.profit[j] as number) - worth;
    const tied = (way.cash[j] as number) + (way.line[j] as number);
    if (best === undefined || gain > best.gain) best = { gain, worth, tied };
  }
  return best ?? { gain: Number.NEGATIVE_INFINITY, worth: 0, tied: 0, short: short ?? 'cash' };
}

const NO_PLACE: Gain = { gain: Number.NEGATIVE_INFINITY, worth: 0, tied: 0, short: 'places' };

function chosen({ points: { chance, falling }, rule, bound }: Bidding, gains: readonly Gain[]): number {
  const reach = gains.findIndex(({ gain }) => gain < UNPAYABLE);
  const known = reach < 0 ? gains.length : reach;
  if (rule === 'max') return known - 1;
  let at = Math.min(bound, known - 1);
  let [sum, best] = [0, bound < 0 ? 0 : Number.NEGATIVE_INFINITY];
  for (let j = 0; j < known; j++) {
    const part = chance[j] as number;
    const gain = gains[j]?.gain ?? 0;
    sum = rule === 'sealed' ? sum + part : sum + part * gain;
    if (j < bound) continue;
    const worth = rule === 'sealed' ? sum * gain : sum;
    // Of equal bids the highest, but none at whose price winning would lose.
    if (worth > best || (worth === best && gain >= 0)) {
      best = worth;
      at = j;
    } else if (falling && gain < 0 && rule === 'best') break;
  }
  return at;
}

/** Chance that a bid at a price point wins. */
export function chanceUpTo({ chance }: PricePoints, at: number): number {
  let sum = 0;
  for (let j = 0; j <= at; j++) sum += chance[j] as number;
  return Math.min(1, sum);
}

export const priceOf = ({ prices }: PricePoints, at: number): Cents | null => prices[at] ?? null;
