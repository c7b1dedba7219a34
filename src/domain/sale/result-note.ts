import type { LotFacts } from '../lot/lot.ts';
import type { Cents } from '../money/cents.ts';
import type { Instant } from '../time/instant.ts';
import type { BidAction } from './bid-action.ts';
import type { TypedResult } from './read-result.ts';
import type { Result } from './result.ts';

interface Sale {
  readonly bids: readonly BidAction[];
  readonly result?: { readonly at: Instant; readonly maxBidCents?: Cents | null | undefined };
}

interface NoteInput {
  readonly typed: TypedResult;
  readonly facts: LotFacts;
  readonly sale: Sale | undefined;
  /** The max bid as it is worked out now; null when no price pays, undefined when something for it is missing. */
  readonly maxBid: Cents | null | undefined;
  readonly now: Instant;
  /** Who bid, when that is said. */
  readonly bidder?: string | undefined;
}

/**
 * A result as it is written down. It ended at the close, as far as anyone knows, or now when the close is still ahead; a
 * correction keeps the moment and the max bid of the result before it, because what we believed then does not change. By
 * proxy or live is what was said, else what the receipts show.
 */
export function resultNoteOf({ typed, facts, sale, maxBid, now, bidder }: NoteInput) {
  const before = sale?.result;
  const close = facts.close?.instant;
  const at = before?.at ?? (close !== undefined && close <= now ? close : now);
  const by = typed.by ?? howWeBid(typed.result, facts, sale?.bids ?? []);
  const maxBidCents = before === undefined ? maxBid : before.maxBidCents;
  return {
    result: typed.result,
    at,
    ...(bidder !== undefined && bidder !== '' && { bidder }),
    ...(by !== undefined && { by }),
    ...(maxBidCents !== undefined && { maxBidCents }),
  };
}

/** A live bid is the later word; without one, a proxy that stands was bidding. */
function howWeBid(result: Result, facts: LotFacts, bids: readonly BidAction[]): 'proxy' | 'live' | undefined {
  if (result.ended === 'withdrawn' || result.ended === 'not-watched') return undefined;
  if (bids.some(({ action }) => action === 'live-bid')) return 'live';
  return facts.proxy === undefined ? undefined : 'proxy';
}

/** What a newly typed proxy amount means beside the one that stands; null when it is the same. */
export function proxyAction(standing: Cents | undefined, amount: Cents | undefined): BidAction['action'] | null {
  if (amount === standing) return null;
  if (amount === undefined) return 'proxy-withdrawn';
  if (standing === undefined) return 'proxy-placed';
  return amount > standing ? 'proxy-raised' : 'proxy-cut';
}
