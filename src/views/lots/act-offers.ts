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
 * The bid that can be noted with one press: placed, raised or cut to where to stop. Null where a press could only be wrong: no
 * amount is offered that a price has passed.
 * @param stop the max bid, or the plan's bid where that is less; see `stopOfStanding`
 */
export function bidOffer(state: BidState, stop: Cents | null | undefined): Extract<Offer, { do: 'bid' }> | null {
  if (typeof stop !== 'number' || stop === 0) return null;
  switch (state.is) {
    case 'none':
      return state.room.is === 'left' ? { do: 'bid', verb: 'placed', cents: stop } : null;
    case 'outbid':
      return state.room.is === 'left' && stop > state.bid.cents ? { do: 'bid', verb: 'raised', cents: stop } : null;
    case 'over-max':
      return { do: 'bid', verb: 'cut', cents: stop };
    default:
      return null;
  }
}

/** What else can be said of a bid with one press: that it was withdrawn, or stays above the max bid. */
export function otherOffers(state: BidState): readonly Offered[] {
  if (state.is !== 'over-max') return [];
  const withdrawn: Offered = { words: 'I withdrew it', act: { do: 'withdraw' } };
  const accept: Offered =
    state.than === 'plan'
      ? { words: 'Ignore the plan for it', act: { do: 'plan', choice: 'plan-ignored' } }
      : { words: 'Accept the risk', act: { do: 'accept-risk', why: '' } };
  return [...(state.maxBid === null ? [withdrawn] : []), ...(state.accepted ? [] : [accept])];
}

/** What a button says that notes a proxy of this amount beside what stands; without an amount, that one is to be typed. */
export function proxyWords(state: BidState, cents: Cents | null): string {
  const stands = state.own.proxy?.cents;
  if (cents === null) return 'I placed …';
  const verb = stands === undefined ? 'placed' : cents < stands ? 'cut' : 'raised';
  return offerWords({ do: 'bid', verb, cents });
}
