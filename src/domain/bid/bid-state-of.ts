import type { Cents } from '../money/cents.ts';
import { HOUR } from '../time/units.ts';
import { askIf } from './ask-if.ts';
import type { BidAsk } from './bid-ask.ts';
import type { BidGiven, BidState, NoBid, OpenBid, Outbid, WithBid } from './bid-state.ts';
import { endedBid } from './ended-bid.ts';
import { riskAccepted } from './over-max.ts';
import { type OwnBids, ownBids, type StandingBid } from './own-bids.ts';
import { passedBy } from './passed-by.ts';
import { type PriceRecord, priceRecord } from './price-record.ts';
import { hasRoom, roomUnder } from './room.ts';
import { overStop, type Stop, stopOf } from './stop-of.ts';

/** A sale that moves by this much is another event: nobody knows whether proxies go along. */
const MOVED_FAR = 12 * HOUR;

/** What the bid on a lot is at a moment. @param now milliseconds since 1970 */
export function bidStateOf(given: BidGiven, now: number): BidState {
  const over = given.result !== undefined || (given.close !== undefined && given.close.last <= now);
  return over ? endedBid(given, now) : openBid(given, now);
}

/** The state of a bid while its lot is open. @param now milliseconds since 1970; only readings of the close hang on it */
export function openBid(given: BidGiven, now: number): OpenBid {
  const own = ownBids(given.bidding.bids);
  const price = priceRecord(given.bidding.prices);
  const mayHaveClosed = given.close !== undefined && given.close.first <= now && given.close.last > now;
  const bid = own.binding;
  if (bid === undefined) return noBid(given, { own, price, mayHaveClosed });
  return placedBid(given, bid, { own, price, mayHaveClosed });
}

interface Known {
  readonly own: OwnBids;
  readonly price: PriceRecord | undefined;
  readonly mayHaveClosed: boolean;
}

function noBid(given: BidGiven, known: Known): NoBid {
  const { own, price } = known;
  const stop = stopOf(given);
  const room = roomUnder(stop.at, given.sealed ? undefined : price?.cents, given.increments);
  const { withdrawn } = own;
  // Only a price that stood when our proxy was in can be ours.
  const mayBeOurs =
    withdrawn?.cents !== undefined &&
    !withdrawn.released &&
    price !== undefined &&
    price.cents > 0 &&
    price.seenAt <= withdrawn.at &&
    price.cents <= withdrawn.cents;
  const asks: BidAsk[] = [
    ...askIf(mayBeOurs && { ask: 'released', price: price.cents }),
    ...fallen(given, price),
    ...askIf(room.is === 'unknown' && { ask: 'no-max-bid' }),
    ...closeAsks(given, known),
  ];
  return { is: 'none', loud: hasRoom(room), asks, room, than: stop.than, sealed: given.sealed, ...known };
}

function placedBid(given: BidGiven, bid: StandingBid, known: Known): OpenBid {
  const { own, price } = known;
  const passed = given.sealed ? { is: 'not' as const } : passedBy(bid, own, price, given.bidding);
  const { maxBid } = given;
  const shared: WithBid = { ...known, bid, loud: false, asks: [], noMaxBid: maxBid === undefined };
  const stop = stopOf(given);
  // A max bid of nothing is none.
  const most = stop.at === 0 ? null : stop.at;
  const by = overStop(bid.cents, { ...stop, at: most });
  const over = by !== 0;
  const asks = [...fallen(given, price), ...bidAsks(given, bid, own), ...closeAsks(given, known)];
  const missing = askIf(maxBid === undefined && { ask: 'no-max-bid' });
  if (passed.is === 'outbid') {
    const all = [...askIf(passed.ask), ...missing, ...asks];
    const state = { ...shared, ...(passed.ours !== undefined && { ours: passed.ours }) };
    return outbid(given, state, passed.at, { asks: all, alsoOverMax: over, stop });
  }
  const pending = pendingBecause(given, bid, price);
  const ours = passed.is === 'same' ? passed.ours : undefined;
  const own_ = { ...shared, ...(ours !== undefined && { ours }) };
  const same = askIf(ours === 'unknown' && { ask: 'high-bidder', price: bid.cents });
  if (over && most !== undefined) {
    // Over plan nothing is risked but the other cars, so there is no risk to accept: the lot is taken out of the plan instead.
    const accepted = stop.than === 'max' && riskAccepted(bid, most, given.bidding.accepted);
    const why = bid.why === undefined && bid.maxBidThen !== undefined && isOver(bid.cents, bid.maxBidThen);
    const risk =
      accepted || stop.than === 'plan'
        ? []
        : [...askIf(why && { ask: 'why-over' as const }), { ask: 'cut-or-accept' as const, to: most }];
    return {
      ...own_,
      is: 'over-max',
      than: stop.than,
      by,
      maxBid: most,
      accepted,
      sealed: given.sealed,
      loud: !accepted || isLoud(asks),
      asks: [...risk, ...same, ...asks],
    };
  }
  if (pending !== null) {
    const wentIn = askIf(
      pending !== 'sealed' && {
        ask: 'went-in' as const,
        bid: bid.cents,
        ...(pending === 'price-below' && { price: price?.cents }),
      },
    );
    const all = [...wentIn, ...missing, ...asks];
    return { ...own_, is: 'pending', because: pending, asks: all, loud: pending === 'price-below' || isLoud(all) };
  }
  const before = passed.is === 'before';
  const room = roomUnder(stop.at, price?.cents, given.increments);
  const all = [
    ...askIf(before && price && { ask: 'price-now', price: price.cents, seenAt: price.seenAt, bid: bid.cents }),
    ...same,
    ...missing,
    ...asks,
  ];
  return {
    ...own_,
    is: 'standing',
    priceBefore: before,
    ...(before && price?.cents === bid.cents && { ours: false }),
    asks: all,
    loud: before || (ours === 'unknown' && hasRoom(room)) || isLoud(all),
  };
}

interface OutbidBy {
  readonly asks: readonly BidAsk[];
  readonly alsoOverMax: boolean;
  readonly stop: Stop;
}

function outbid(given: BidGiven, shared: WithBid, at: Cents, { asks, alsoOverMax, stop }: OutbidBy): Outbid {
  const room = roomUnder(stop.at, at, given.increments);
  return { ...shared, is: 'outbid', at, room, than: stop.than, alsoOverMax, asks, loud: hasRoom(room) || isLoud(asks) };
}

/** A live bid that the venue has not shown yet, and any bid at a sealed sale. */
function pendingBecause({ sealed }: BidGiven, bid: StandingBid, price: PriceRecord | undefined) {
  if (sealed) return 'sealed' as const;
  if (bid.how !== 'live' || bid.confirmedAt !== undefined) return null;
  if (price === undefined || price.seenAt < bid.at) return 'not-confirmed' as const;
  return price.cents < bid.cents ? ('price-below' as const) : null;
}

const isOver = (bid: Cents, maxBid: Cents | null) => maxBid === null || bid > maxBid;

/** Some questions are loud by themselves, whatever the state. */
const LOUD: ReadonlySet<BidAsk['ask']> = new Set(['which-price', 'which-bid', 'no-max-bid']);
const isLoud = (asks: readonly BidAsk[]): boolean => asks.some(({ ask }) => LOUD.has(ask));

function fallen({ sealed }: BidGiven, price: PriceRecord | undefined): BidAsk[] {
  if (sealed || price?.fell === undefined) return [];
  return [{ ask: 'which-price', was: price.cents, now: price.fell.cents }];
}

/** What two people, or two kinds of bid, leave open. */
function bidAsks(
  { close }: BidGiven,
  bid: StandingBid,
  { proxy, live, rival, replaced, withdrawn }: OwnBids,
): BidAsk[] {
  // A proxy below a live bid of ours, or one that was taken out, after the venue last showed the live bid.
  const since = proxy?.at ?? withdrawn?.at ?? Number.NEGATIVE_INFINITY;
  const beside = live !== undefined && bid.how === 'live' && since > (live.confirmedAt ?? live.at);
  const moved = bid.closeThen !== undefined && close !== undefined && close.first - bid.closeThen >= MOVED_FAR;
  return [
    ...askIf(rival && { ask: 'which-bid', bids: [{ cents: bid.cents, by: bid.by }, rival] }),
    ...askIf(replaced && proxy && { ask: 'replaced', by: replaced.by, was: replaced.cents, now: proxy.cents }),
    ...askIf(beside && { ask: 'live-stands', bid: bid.cents, proxy: proxy?.cents }),
    ...askIf(moved && bid.closeThen && { ask: 'sale-moved', from: bid.closeThen, to: close.first }),
  ];
}

function closeAsks({ close }: BidGiven, { mayHaveClosed }: Known): BidAsk[] {
  if (close === undefined) return [{ ask: 'no-close' }];
  return close.first === close.last ? [] : [{ ask: 'which-close', ...close, between: mayHaveClosed }];
}
