import type { Cents } from '../money/cents.ts';
import type { Increments } from '../price/increments.ts';
import type { Result } from '../sale/result.ts';
import type { Instant } from '../time/instant.ts';
import type { BidAsk } from './bid-ask.ts';
import type { Bidding } from './bidding.ts';
import type { OwnBids, StandingBid } from './own-bids.ts';
import type { PriceRecord } from './price-record.ts';
import type { Room } from './room.ts';

/** What a bid's state follows from. */
export interface BidGiven {
  readonly bidding: Bidding;
  /** Bids are handed in unseen: no price says anything of ours. */
  readonly sealed: boolean;
  /** Null when no price works; undefined when it can't be worked out. Asked for only where something hangs on it. */
  readonly maxBid: Cents | null | undefined;
  /** What the plan for the purse bids; null when it leaves the lot out, absent where there is no plan for it. */
  readonly planned?: Cents | null | undefined;
  /** Of the sale; undefined when nobody knows them. */
  readonly increments: Increments | undefined;
  /** When it closes: the first and the last moment that this can mean. Undefined while nobody has said. */
  readonly close?: { readonly first: Instant; readonly last: Instant } | undefined;
  readonly result?: NotedEnd | undefined;
  /** Another result that somebody noted without knowing of `result`. */
  readonly otherResult?: Result | undefined;
  /** The sale was canceled after the hammer. */
  readonly canceled: boolean;
}

/** How it ended, as it was noted. */
export interface NotedEnd {
  readonly result: Result;
  readonly at: Instant;
  readonly bidder?: string | undefined;
  readonly by?: 'proxy' | 'live' | undefined;
  /** It ended before its close, and whoever noted it said so. */
  readonly early?: boolean | undefined;
  /** Whether our bid was in; absent while nobody has asked. */
  readonly bidWasIn?: boolean | undefined;
}

/** What every state says beside its own. */
interface Shared {
  /** Somebody should act, or answer, before the close: as loud as "No proxy yet". */
  readonly loud: boolean;
  /** What only a person can answer, the weightiest first. */
  readonly asks: readonly BidAsk[];
  readonly price?: PriceRecord | undefined;
  readonly own: OwnBids;
}

/** What a bid is held against: the max bid, or what the plan makes of it where that is less. */
export type Than = 'max' | 'plan';

/** Between two readings of its close nobody can say whether it has closed. */
interface Open extends Shared {
  readonly mayHaveClosed: boolean;
}

export interface NoBid extends Open {
  readonly is: 'none';
  readonly room: Room;
  /** What the room ends at. */
  readonly than: Than;
  readonly sealed: boolean;
}

/** What a bid of ours has in all states in which one stands. */
export interface WithBid extends Open {
  readonly bid: StandingBid;
  /** What is known of who holds a price that equals our bid; absent where it does not. */
  readonly ours?: boolean | 'unknown' | undefined;
  /** The max bid can't be worked out, so the bid is held against nothing. */
  readonly noMaxBid: boolean;
}

/** Ours is at or above every price that was seen since. */
export interface Standing extends WithBid {
  readonly is: 'standing';
  /** A price at or above it was seen before it was placed. */
  readonly priceBefore: boolean;
}

/** A price above ours. */
export interface Outbid extends WithBid {
  readonly is: 'outbid';
  readonly at: Cents;
  readonly room: Room;
  readonly than: Than;
  readonly alsoOverMax: boolean;
}

/** Ours is above the max bid, or well above what the plan bids now, and it may win. */
export interface OverMax extends WithBid {
  readonly is: 'over-max';
  readonly than: Than;
  /** By how much; null where no price works, or the plan leaves the lot out. */
  readonly by: Cents | null;
  /** The max bid or the planned one; null where no price works, or the plan leaves the lot out. */
  readonly maxBid: Cents | null;
  /** Somebody decided to leave it so, and gave a reason. */
  readonly accepted: boolean;
  readonly sealed: boolean;
}

/** A bid is in, and only the venue can say how it stands. */
export interface Pending extends WithBid {
  readonly is: 'pending';
  readonly because: 'sealed' | 'not-confirmed' | 'price-below';
}

/** The close has passed, or a result is noted. */
export interface Ended extends Shared {
  readonly is: 'ended';
  readonly result?: NotedEnd | undefined;
  readonly otherResult?: Result | undefined;
  readonly canceled: boolean;
}

export type OpenBid = NoBid | Standing | Outbid | OverMax | Pending;
/** What the bid on a lot really is. */
export type BidState = OpenBid | Ended;
