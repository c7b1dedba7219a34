import { amountOf } from '../sale/result-words.ts';
import { askIf } from './ask-if.ts';
import type { BidAsk } from './bid-ask.ts';
import type { BidGiven, Ended, NotedEnd } from './bid-state.ts';
import { type OwnBids, ownBids } from './own-bids.ts';
import { priceRecord } from './price-record.ts';

/** The state of a bid once its lot has closed, or its result is noted. It is never loud: no act before the close is left. */
export function endedBid(given: BidGiven, now: number): Ended {
  const { result, otherResult, canceled } = given;
  const own = ownBids(given.bidding.bids);
  const asks = result === undefined ? [{ ask: 'how-ended' as const }] : resultAsks(given, result, own, now);
  const price = priceRecord(given.bidding.prices);
  return { is: 'ended', result, otherResult, canceled, loud: false, asks, own, price };
}

function resultAsks(given: BidGiven, noted: NotedEnd, own: OwnBids, now: number): BidAsk[] {
  const { close, otherResult, sealed } = given;
  const early = noted.early !== true && close !== undefined && close.first > now && noted.result.ended !== 'withdrawn';
  return [
    ...askIf(otherResult && { ask: 'which-result', results: [noted.result, otherResult] }),
    ...askIf(early && { ask: 'ended-early', close: close.first }),
    ...(given.canceled ? [] : bidAsks(noted, own, sealed)),
  ];
}

/** A loss below our bid, or a win above it, does not fit what we think we bid. */
function bidAsks(noted: NotedEnd, { binding }: OwnBids, sealed: boolean): readonly BidAsk[] {
  const { result } = noted;
  const amount = amountOf(result);
  if (amount === undefined) return [];
  if (result.ended === 'lost')
    return askIf(
      binding !== undefined &&
        amount < binding.cents &&
        noted.bidWasIn === undefined && { ask: 'was-in', bid: binding.cents, how: sealed ? 'sealed' : binding.how },
    );
  if (result.ended !== 'won' || noted.bidder !== undefined || noted.by === 'live') return [];
  if (binding !== undefined && binding.cents >= amount) return [];
  return [{ ask: 'who-bid', amount, ...(binding && { bid: binding.cents }) }];
}
