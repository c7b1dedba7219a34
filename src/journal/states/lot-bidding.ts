import { type Bidding, inTime, NO_BIDDING, type OwnBid, type PriceSeen } from '../../domain/bid/bidding.ts';
import { ownBids } from '../../domain/bid/own-bids.ts';
import type { Evidence } from '../../domain/lot/evidence.ts';
import type { LotSource } from '../../domain/lot/lot.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from './lot-state.ts';

/**
 * What is known of the bidding on a lot: all since something was noted, before that the price and the proxy that it came in
 * with. Who placed such a proxy, and when, nobody said: it counts from when it came in, as the price beside it does.
 */
export function biddingOf({ bidding, facts, source, evidence, addedAt }: LotState): Bidding {
  if (bidding !== undefined) return bidding;
  const { priceNow, proxy, close } = facts;
  if (priceNow === undefined && proxy === undefined) return NO_BIDDING;
  const from = fromOf(evidence.priceNow, source);
  const bid = { action: 'proxy-placed', cents: proxy, at: addedAt, by: '', closeThen: close?.instant } as const;
  return {
    prices: priceNow === undefined ? [] : [{ cents: priceNow, seenAt: addedAt, from }],
    bids: proxy === undefined ? [] : [withoutGaps(bid)],
    accepted: [],
  };
}

/**
 * The lot with one more bid of ours beside those that were known. The proxy that stands follows from all acts by their
 * times, not from the one that was written down last.
 */
export function withBid(known: Bidding, lot: LotState, bid: OwnBid): LotState {
  const bids = inTime(known.bids, withoutGaps(bid), ({ at }) => at);
  const { proxy: _, ...facts } = lot.facts;
  const proxy = ownBids(bids).proxy?.cents;
  return { ...lot, facts: { ...facts, ...(proxy !== undefined && { proxy }) }, bidding: { ...known, bids } };
}

/**
 * The lot with its price now as the last that was seen. A price that was emptied was never seen; one that was seen earlier
 * than another does not take its place.
 * @param confirmed whether a person has taken it though it contradicts what was known: it counts as typed
 */
export function withPrice(known: Bidding, lot: LotState, seenAt: Instant, confirmed?: true): LotState {
  const { priceNow } = lot.facts;
  if (priceNow === undefined) return { ...lot, bidding: { ...known, prices: [] } };
  const from = confirmed ? 'typed' : fromOf(lot.evidence.priceNow, 'typed');
  const seen: PriceSeen = { cents: priceNow, seenAt, from };
  const prices = inTime(known.prices, seen, (one) => one.seenAt);
  const last = prices.at(-1) ?? seen;
  return { ...lot, facts: { ...lot.facts, priceNow: last.cents }, bidding: { ...known, prices } };
}

function fromOf(evidence: Evidence | undefined, otherwise: LotSource): PriceSeen['from'] {
  switch (evidence?.from ?? otherwise) {
    case 'typed':
      return 'typed';
    case 'page':
    case 'page-text':
    case 'structured-data':
    case 'pointed':
      return 'page';
    default:
      return 'list';
  }
}

/** As a database gives it back: without members that hold nothing. */
function withoutGaps(bid: OwnBid): OwnBid {
  return Object.fromEntries(Object.entries(bid).filter(([, value]) => value !== undefined)) as unknown as OwnBid;
}
