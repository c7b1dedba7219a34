import type { Cents } from '../money/cents.ts';
import type { Instant } from '../time/instant.ts';

/** Why a lot's planned bid is what it is. */
export type PlanReason =
  /** The purse does not hold it back: the planned bid is the max bid. */
  | { readonly is: 'at-max' }
  /** One step more would earn less than its money is worth in the lots still to come. */
  | { readonly is: 'worth-more-later'; readonly tied: Cents; readonly worth: Cents; readonly lotsToCome: number }
  /** The purse reaches no further. */
  | { readonly is: 'purse-ends'; readonly short: 'cash' | 'line' | 'places' }
  /** It closes with others, and their bids together must fit the purse. */
  | { readonly is: 'closes-together'; readonly lots: number }
  /** Money is held for a lot that the user wants. */
  | { readonly is: 'held-for-pinned' }
  | { readonly is: 'pinned' }
  /** The proxy that is in binds us: the plan alone would bid less. */
  | { readonly is: 'proxy' }
  | { readonly is: 'plan-ignored' }
  | { readonly is: 'skipped' }
  /** Too few closings of its group to ration cash by: its max bid stands. */
  | { readonly is: 'few-closings'; readonly closings: number; readonly needed: number }
  | { readonly is: 'no-max-bid' }
  | { readonly is: 'no-close' }
  | { readonly is: 'closed' }
  | { readonly is: 'after-purse' }
  /** The price has passed what the plan would pay. */
  | { readonly is: 'price-passed' }
  | { readonly is: 'cant-work-out'; readonly message: string };

/** The chance that a bid wins, with what stands behind it. */
export interface WinChance {
  /** 0 to 1. */
  readonly chance: number;
  /** Closings of its group that say something of the rivals. */
  readonly closings: number;
  /** "about 1 in 5". */
  readonly words: string;
}

/** Money and room that a bid would take if it won at its own price. */
export interface Takes {
  readonly cash: Cents;
  readonly line: Cents;
}

export interface PlanRow {
  readonly lotId: string;
  readonly close: Instant | null;
  readonly maxBid: Cents | null;
  /** What to bid with the purse as it is now, on the lot's own increments; null for no bid. Never above the max bid. */
  readonly plannedBid: Cents | null;
  /**
   * What would be planned if the proxy that is in could be lowered; absent where that is no less. The planned bid is never
   * below the proxy, because its money is promised.
   */
  readonly withoutProxy?: Cents | null;
  readonly reason: PlanReason;
  /** The reason in one sentence. */
  readonly sentence: string;
  /** At the planned bid, or at the max bid where none is planned; null where too few closings say anything. */
  readonly chance: WinChance | null;
  /** At the planned bid; null where none is planned. */
  readonly takes: Takes | null;
  /** Whether the purse still holds this bid beside every proxy that stands: if not, it is to be placed later, or others cut. */
  readonly fitsBesideProxies: boolean;
  /** Lots with the same number close too near to one another to be reacted to; in closing order from 0. Null outside the plan. */
  readonly batch: number | null;
}

/** A figure over the possible outcomes: the middle one, and the worst and best one in ten. */
export interface Fan {
  readonly worst: Cents;
  readonly likely: Cents;
  readonly best: Cents;
}

/** The purse after a close, if the plan is followed. */
export interface FanPoint {
  readonly at: Instant;
  readonly lotId: string;
  /** Own cash left to promise. The worst is the lowest. */
  readonly cash: Fan;
  /** Cars won so far, expected. */
  readonly cars: number;
  /** Profit of the cars won so far, expected. */
  readonly profit: Cents;
}

export interface Bounds {
  /**
   * Following the plan earns at least this on average, if the beliefs about prices are right. Where lots close together it is
   * near and not exact.
   */
  readonly low: Cents;
  /** Nobody does better on average than this. */
  readonly high: Cents;
}

/** Something that is wrong with what the plan was made from, as a sentence that says what to do. */
export interface PlanFault {
  readonly about: 'purse' | 'proxies' | 'lot' | 'close' | 'pinned' | 'closings' | 'level';
  /** The lot that it is about. */
  readonly lotId?: string;
  readonly sentence: string;
}

export interface Plan {
  /** In closing order; lots without a close last, in the order given. */
  readonly rows: readonly PlanRow[];
  /** Expected profit of the whole plan. */
  readonly profit: Cents;
  readonly bounds: Bounds;
  readonly cars: number;
  /** One point after each close; the last is the end of the purse. */
  readonly fan: readonly FanPoint[];
  /** What one more $1,000 of own cash would add to the expected profit. */
  readonly worthOfThousand: Cents;
  /** What $1,000 more on the floor line would add; 0 without a line. */
  readonly worthOfLineThousand: Cents;
  /** What one more place on the lot would add; 0 where there are always enough. */
  readonly worthOfPlace: Cents;
  /** Expected profit of the plan made for prices that run 5% higher, and 5% lower. */
  readonly ifPricesHigher: Cents;
  readonly ifPricesLower: Cents;
  /** Money and room that the standing proxies would take if every one of them won. */
  readonly standing: Takes & { readonly cars: number };
  readonly faults: readonly PlanFault[];
}
