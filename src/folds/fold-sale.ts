import type { LotFacts } from '../domain/lot/lot.ts';
import type { Cents } from '../domain/money/cents.ts';
import type { BidAction } from '../domain/sale/bid-action.ts';
import type { Result } from '../domain/sale/result.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Entry } from '../journal/entry.ts';
import type { EntryId } from '../journal/ids.ts';

/** A bid action and the entry that holds it. */
export interface NotedBid extends BidAction {
  readonly entry: EntryId;
}

/** How the lot ended, by the last word on it. */
export interface NotedResult {
  readonly entry: EntryId;
  readonly result: Result;
  readonly at: Instant;
  readonly notedAt: Instant;
  readonly author: string;
  readonly bidder?: string | undefined;
  readonly by?: 'proxy' | 'live' | undefined;
  readonly maxBidCents?: Cents | null | undefined;
}

/** What happened at the sale of one lot. A lot of which nothing is known yet has none of it. */
export interface SaleState {
  /** In the order in which they were written down. */
  readonly bids: readonly NotedBid[];
  readonly result?: NotedResult;
}

const NOTHING: SaleState = { bids: [] };

/** The sale after an entry about the lot that counts; the same object when the entry says nothing of it. */
export function saleAfter(sale: SaleState | undefined, entry: Entry): SaleState | undefined {
  const { happening } = entry;
  const before = sale ?? NOTHING;
  switch (happening.kind) {
    case 'bid-noted':
      return { ...before, bids: [...before.bids, { ...happening.bid, entry: entry.id }] };
    case 'result-noted': {
      const { kind: _, ...noted } = happening;
      return { ...before, result: { ...noted, entry: entry.id, notedAt: entry.at, author: entry.author } };
    }
    default:
      return sale;
  }
}

/** The facts after a bid action: the proxy that stands is a fact of the lot. */
export function factsAfterBid(facts: LotFacts, bid: BidAction): LotFacts {
  switch (bid.action) {
    case 'proxy-placed':
    case 'proxy-raised':
    case 'proxy-cut':
      return bid.cents === undefined ? facts : { ...facts, proxy: bid.cents };
    case 'proxy-withdrawn': {
      const { proxy: _, ...left } = facts;
      return left;
    }
    default:
      return facts;
  }
}
