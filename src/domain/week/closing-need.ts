import type { BidState } from '../bid/bid-state.ts';

/** What a closing still needs, the greatest need first:
 * - `danger`: it closes in the busy hours, somebody should act on it, and it is on the user's own hands;
 * - `unsaid`: it has closed and has no result;
 * - `outbid`: a price has passed our bid, and it can be raised;
 * - `over-max`: our bid stands above the max bid;
 * - `bare`: no proxy is placed yet, but there is time to watch it, or somebody else does;
 * - `check`: a bid is in, and something about it is in doubt;
 * - `past-stop`: the price has gone past the price at which to stop, so there is nothing to do;
 * - `placed`: our bid is in, and nothing is to be done about it;
 * - `over`: how it ended is known.
 */
export const NEEDS = [
  'danger',
  'unsaid',
  'outbid',
  'over-max',
  'bare',
  'check',
  'past-stop',
  'placed',
  'over',
] as const;
export type Need = (typeof NEEDS)[number];

export interface ClosingFacts {
  /** What its bid really is. */
  readonly bid: BidState;
  readonly inRush: boolean;
  /** It was handed over, or the user is done with it. */
  readonly offHands: boolean;
}

export function needOf({ bid, inRush, offHands }: ClosingFacts): Need {
  if (bid.is === 'ended') return bid.result === undefined ? 'unsaid' : 'over';
  if (!bid.loud) return bid.is === 'none' || bid.is === 'outbid' ? 'past-stop' : 'placed';
  if (inRush && !offHands) return 'danger';
  switch (bid.is) {
    case 'none':
      return 'bare';
    case 'outbid':
    case 'over-max':
      return bid.is;
    default:
      return 'check';
  }
}

/** The greatest need among several; `over` for none. */
export function greatestNeed(needs: Iterable<Need>): Need {
  const there = new Set(needs);
  return NEEDS.find((need) => there.has(need)) ?? 'over';
}

/** Whether somebody should still act before the close. */
export const wantsAct = (need: Need): boolean =>
  need === 'danger' || need === 'outbid' || need === 'over-max' || need === 'bare' || need === 'check';
