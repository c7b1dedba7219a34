import { type Bidding, inTime, NO_BIDDING, type OwnBid, type PriceSeen } from '../domain/bid/bidding.ts';
import { ownBids } from '../domain/bid/own-bids.ts';
import type { Evidence } from '../domain/lot/evidence.ts';
import type { LotSource } from '../domain/lot/lot.ts';
import { proxyAction } from '../domain/sale/result-note.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Entry } from '../journal/entry.ts';
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

/** The lot after an entry, with what the entry says of prices and of bids of ours; the proxy that stands is a fact of it. */
export function withBidding(before: LotState, after: LotState, entry: Entry): LotState {
  const { happening } = entry;
  switch (happening.kind) {
    case 'bid-noted': {
      const { page: _, picture: __, ...act } = happening.bid;
      return withBid(before, after, { ...act, by: act.by ?? entry.author, closeThen: before.facts.close?.instant });
    }
    case 'risk-accepted': {
      const { kind: _, ...risk } = happening;
      const known = biddingOf(before);
      return { ...after, bidding: { ...known, accepted: inTime(known.accepted, risk, ({ at }) => at) } };
    }
    case 'lot-changed': {
      const { set, clear } = happening;
      const priced = set.priceNow !== undefined || clear.includes('priceNow');
      const seen = priced ? withPrice(before, after, seenWhen(before, entry)) : after;
      const action = proxyAction(before.facts.proxy, after.facts.proxy);
      if (action === null) return seen;
      const { proxy } = after.facts;
      const bid = { action, at: entry.at, by: entry.author, closeThen: before.facts.close?.instant };
      return withBid(priced ? seen : before, seen, proxy === undefined ? bid : { ...bid, cents: proxy });
    }
    default:
      return after;
  }
}

/** The proxy that stands follows from all acts by their times, not from the one that was written down last. */
function withBid(before: LotState, after: LotState, bid: OwnBid): LotState {
  const known = biddingOf(before);
  const bids = inTime(known.bids, withoutGaps(bid), ({ at }) => at);
  const { proxy: _, ...facts } = after.facts;
  const proxy = ownBids(bids).proxy?.cents;
  return { ...after, facts: { ...facts, ...(proxy !== undefined && { proxy }) }, bidding: { ...known, bids } };
}

/** Seen when the entry says so, else when it was written; a clock that was put back does not make it older than the last. */
function seenWhen(before: LotState, { at, happening }: Entry): Instant {
  const said = happening.kind === 'lot-changed' ? happening.seenAt : undefined;
  const last = biddingOf(before).prices.at(-1)?.seenAt ?? at;
  return said ?? (last > at ? last : at);
}

/** A price that was emptied was never seen; one that was seen earlier than another does not take its place. */
function withPrice(before: LotState, after: LotState, seenAt: Instant): LotState {
  const known = biddingOf(before);
  const { priceNow } = after.facts;
  if (priceNow === undefined) return { ...after, bidding: { ...known, prices: [] } };
  const seen: PriceSeen = { cents: priceNow, seenAt, from: fromOf(after.evidence.priceNow, 'typed') };
  const prices = inTime(known.prices, seen, (one) => one.seenAt);
  const last = prices.at(-1) ?? seen;
  return { ...after, facts: { ...after.facts, priceNow: last.cents }, bidding: { ...known, prices } };
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
