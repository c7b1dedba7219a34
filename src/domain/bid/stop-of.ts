import { type Cents, cents } from '../money/cents.ts';
import type { BidGiven, Than } from './bid-state.ts';

/** Where to stop, and by what: the max bid, or the plan's bid where that is less. */
export interface Stop {
  /** Null when no price works or the plan leaves the lot out; undefined when it can't be worked out. */
  readonly at: Cents | null | undefined;
  readonly than: Than;
}

/** Without a max bid a plan says nothing: it was made from one, and whatever took that away counts more. */
export function stopOf({ maxBid, planned }: Pick<BidGiven, 'maxBid' | 'planned'>): Stop {
  if (typeof maxBid !== 'number' || maxBid === 0 || planned === undefined) return { at: maxBid, than: 'max' };
  if (planned !== null && planned >= maxBid) return { at: maxBid, than: 'max' };
  return { at: planned, than: 'plan' };
}

/**
 * A plan moves a little with every result, and a bid that is a little over it costs next to nothing: the loss grows with the
 * square of the distance. So only a bid this much over its planned bid is called over. Our own choice, no source.
 */
const SLACK = 0.02;

/** By how much a bid is over what it is held against: 0 when it is not, null when nothing is to be bid at all. */
export function overStop(bid: Cents, { at, than }: Stop): Cents | null {
  if (at === undefined) return cents(0);
  if (at === null) return null;
  const over = bid - at;
  return cents(over > (than === 'plan' ? at * SLACK : 0) ? over : 0);
}
