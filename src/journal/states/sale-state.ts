import type { Cents } from '../../domain/money/cents.ts';
import type { BidAction } from '../../domain/sale/bid-action.ts';
import type { Result } from '../../domain/sale/result.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { DeviceId, EntryId } from '../ids.ts';
import type { Noted } from './noted.ts';

/** A bid action and the entry that holds it. */
export interface NotedBid extends BidAction {
  readonly entry: EntryId;
}

/** How the lot ended, by the last word on it. */
export interface NotedResult extends Noted {
  readonly result: Result;
  readonly at: Instant;
  readonly bidder?: string | undefined;
  readonly by?: 'proxy' | 'live' | undefined;
  readonly maxBidCents?: Cents | null | undefined;
  readonly plannedCents?: Cents | null | undefined;
  readonly early?: boolean | undefined;
  readonly bidWasIn?: boolean | undefined;
  readonly corrects?: EntryId | undefined;
  /** The browser that wrote it, where the journal can tell whether that one knew of the result before. */
  readonly device?: DeviceId | undefined;
}

/** What happened at the sale of one lot. A lot of which nothing is known yet has none of it. */
export interface SaleState {
  /** In the order in which they were written down. */
  readonly bids: readonly NotedBid[];
  readonly result?: NotedResult;
  /** What another browser noted otherwise, without either knowing of the other. */
  readonly otherResult?: NotedResult;
}

export const NO_SALE: SaleState = { bids: [] };
