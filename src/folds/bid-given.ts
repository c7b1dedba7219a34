import type { BidGiven } from '../domain/bid/bid-state.ts';
import { ownBids } from '../domain/bid/own-bids.ts';
import { undoesSale } from '../domain/dispute/dispute.ts';
import type { Cents } from '../domain/money/cents.ts';
import type { Increments } from '../domain/price/increments.ts';
import { lastReading } from '../domain/time/close-time.ts';
import { biddingOf } from '../journal/states/lot-bidding.ts';
import type { LotState } from '../journal/states/lot-state.ts';

/** What a lot's bid is held against. */
export interface BidMoney {
  /** Null when no price works; undefined when it can't be worked out. May be a getter: it is asked for only where it matters. */
  readonly maxBid: Cents | null | undefined;
  /** What the plan bids; null when it leaves the lot out, absent where there is no plan for it. */
  readonly planned?: Cents | null | undefined;
  /** The steps of its sale; undefined when nobody knows them. */
  readonly increments: Increments | undefined;
}

/** What the state of a lot's bid follows from. */
export function bidGiven(lot: LotState, money: BidMoney): BidGiven {
  const { facts, sale, after } = lot;
  const { close } = facts;
  return {
    bidding: biddingOf(lot),
    sealed: facts.sealed !== undefined,
    get maxBid() {
      return money.maxBid;
    },
    planned: money.planned,
    increments: money.increments,
    ...(close !== undefined && { close: { first: close.instant, last: lastReading(close) } }),
    result: sale?.result,
    otherResult: sale?.otherResult?.result,
    canceled: isCanceled({ after, sale }),
  };
}

/** Whether a bid of ours is in: known at once, without any figure. */
export const hasBid = (lot: LotState): boolean => ownBids(biddingOf(lot).bids).binding !== undefined;

/** Whether nobody can bid any more: how it ended is known, or the last moment at which it can close has passed. */
export function isOver({ facts, sale }: Pick<LotState, 'facts' | 'sale'>, now: number): boolean {
  return sale?.result !== undefined || (facts.close !== undefined && lastReading(facts.close) <= now);
}

/** Whether a lot was won and its sale does not stand any more. */
export function isCanceled({ after, sale }: Pick<LotState, 'after' | 'sale'>): boolean {
  if (sale?.result?.result.ended !== 'won') return false;
  return (after?.disputes ?? []).some(({ outcome }) => outcome !== undefined && undoesSale(outcome.ended));
}
