import type { Cents } from '../money/cents.ts';
import type { AcceptedRisk } from '../sale/accepted-risk.ts';
import type { BidAction } from '../sale/bid-action.ts';
import type { Instant } from '../time/instant.ts';

/** A price that somebody saw at the sale. 0 is a price: nobody has bid yet. */
export interface PriceSeen {
  readonly cents: Cents;
  readonly seenAt: Instant;
  /** `typed` by a person, who may correct an earlier one downward; read from a `page` or a `list`, which may be wrong. */
  readonly from: 'typed' | 'page' | 'list';
}

/** One act on a bid of ours, or what the venue said of it. */
export interface OwnBid extends Omit<BidAction, 'page' | 'picture'> {
  /** Who did it; empty for a proxy that the lot came in with. */
  readonly by: string;
  /** When the lot was to close, as was known then. */
  readonly closeThen?: Instant | undefined;
}

/** What is known of the bidding on one lot, each list by the time at which it happened. */
export interface Bidding {
  readonly prices: readonly PriceSeen[];
  readonly bids: readonly OwnBid[];
  readonly accepted: readonly AcceptedRisk[];
}

export const NO_BIDDING: Bidding = { prices: [], bids: [], accepted: [] };

/** A list by time with one more in its place: what was written down late still comes where it belongs. */
export function inTime<One>(list: readonly One[], one: One, timeOf: (one: One) => number): readonly One[] {
  const later = list.findIndex((other) => timeOf(other) > timeOf(one));
  return later === -1 ? [...list, one] : list.toSpliced(later, 0, one);
}
