import type { BidState } from '../../domain/bid/bid-state.ts';

/** What wants a hand before what is settled, and that before what is over: 0 first. */
export function urgencyOf(bid: BidState): number {
  if (bid.is === 'ended') return bid.result === undefined ? 4 : 9;
  if (!bid.loud) return bid.is === 'none' ? 6 : 5;
  return { outbid: 0, 'over-max': 1, none: 2, standing: 3, pending: 3 }[bid.is];
}
