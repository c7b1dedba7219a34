import type { Cents } from '../money/cents.ts';
import type { Instant } from '../time/instant.ts';
import type { BidAsk } from './bid-ask.ts';
import type { Bidding } from './bidding.ts';
import { type OwnBids, ownBids, type StandingBid } from './own-bids.ts';
import type { PriceRecord } from './price-record.ts';

/** How a bid of ours stands to the price. */
export type Passed =
  | { readonly is: 'not' }
  /** The price equals it; of two bids of one amount the earlier leads (common practice, no source). */
  | { readonly is: 'same'; readonly ours: true | 'unknown' }
  /** The price had reached it before it was placed, and nobody has looked since: it can hardly lead. */
  | { readonly is: 'before' }
  | { readonly is: 'outbid'; readonly at: Cents; readonly ask?: BidAsk; readonly ours?: false | 'unknown' };

/**
 * Holds a bid against the price seen. A price that was seen since it was placed says how it stands. One from before says
 * less: it may be our own, if a higher bid of ours stood then; else an open sale does not go down, so a raise that falls
 * short of it is outbid, and a first bid that does is in doubt.
 */
export function passedBy(bid: StandingBid, own: OwnBids, price: PriceRecord | undefined, bidding: Bidding): Passed {
  const word = own.word !== undefined && own.word.at >= bid.at ? own.word : undefined;
  if (word?.says === 'outbid') return { is: 'outbid', at: atLeast(bid.cents, price) };
  if (price === undefined || price.cents < bid.cents) return { is: 'not' };
  if (word?.says === 'high-bidder' && (word.at >= price.seenAt || word.cents === price.cents))
    return price.cents === bid.cents ? { is: 'same', ours: true } : { is: 'not' };
  const before = price.since < bid.at;
  const again = price.seenAt >= bid.at;
  const covered = before && coveredAt(bidding, price);
  if (price.cents === bid.cents) {
    if (!before || covered) return { is: 'same', ours: 'unknown' };
    return bid.first && !again
      ? { is: 'before' }
      : { is: 'outbid', at: price.cents, ask: raiseAsk(bid, price), ours: false };
  }
  if (again || !before) return { is: 'outbid', at: price.cents };
  // A cut that the venue has confirmed leaves nothing to ask.
  if (covered && bid.confirmedAt !== undefined) return { is: 'outbid', at: price.cents };
  if (covered) return { is: 'outbid', at: price.cents, ask: { ask: 'cut-taken', bid: bid.cents }, ours: 'unknown' };
  return bid.first ? { is: 'before' } : { is: 'outbid', at: price.cents, ask: raiseAsk(bid, price) };
}

const raiseAsk = (bid: StandingBid, price: PriceRecord): BidAsk => ({
  ask: 'raise-right',
  bid: bid.cents,
  price: price.cents,
});

const atLeast = (bid: Cents, price: PriceRecord | undefined): Cents =>
  price !== undefined && price.cents > bid ? price.cents : bid;

/** Whether a bid of ours stood at or above the price when that was first seen. */
function coveredAt({ bids }: Bidding, { cents, since }: PriceRecord): boolean {
  const then = ownBids(bids.filter(({ at }: { readonly at: Instant }) => at <= since)).binding;
  return then !== undefined && then.cents >= cents;
}
