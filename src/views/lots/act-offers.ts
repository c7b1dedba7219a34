import type { LotAct } from '../../acts/act.ts';
import { type Offer, offerWords } from '../../domain/alerts/offer.ts';
import type { BidState } from '../../domain/bid/bid-state.ts';
import type { Cents } from '../../domain/money/cents.ts';

/** An act that is worth one press, and what its button says. */
export interface Offered {
  readonly words: string;
  readonly act: LotAct;
}

/**
 * The bid that can be noted with one press: placed, raised or cut to the max bid. Null where a press could only be wrong: no
 * amount is offered that a price has passed.
 * @param maxBid null when no price works; undefined when it can't be worked out
 */
export function bidOffer(state: BidState, maxBid: Cents | null | undefined): Extract<Offer, { do: 'bid' }> | null {
  if (typeof maxBid !== 'number' || maxBid === 0) return null;
  switch (state.is) {
    case 'none':
      return state.room.is === 'left' ? { do: 'bid', verb: 'placed', cents: maxBid } : null;
    case 'outbid':
      return state.room.is === 'left' && maxBid > state.bid.cents ? { do: 'bid', verb: 'raised', cents: maxBid } : null;
    case 'over-max':
      return { do: 'bid', verb: 'cut', cents: maxBid };
    default:
      return null;
  }
}

/** What else can be said of a bid with one press: that it was withdrawn, or stays above the max bid. */
export function otherOffers(state: BidState): readonly Offered[] {
  if (state.is !== 'over-max') return [];
  const withdrawn: Offered = { words: 'I withdrew it', act: { do: 'withdraw' } };
  const accept: Offered = { words: 'Accept the risk', act: { do: 'accept-risk', why: '' } };
  return [...(state.maxBid === null ? [withdrawn] : []), ...(state.accepted ? [] : [accept])];
}

/** What a button says that notes a proxy of this amount beside what stands; without an amount, that one is to be typed. */
export function proxyWords(state: BidState, cents: Cents | null): string {
  const stands = state.own.proxy?.cents;
  if (cents === null) return 'I placed …';
  const verb = stands === undefined ? 'placed' : cents < stands ? 'cut' : 'raised';
  return offerWords({ do: 'bid', verb, cents });
}
