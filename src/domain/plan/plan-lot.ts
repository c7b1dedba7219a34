import type { MarketGroup } from '../market/market-group.ts';
import type { Cents } from '../money/cents.ts';
import type { Increments } from '../price/increments.ts';
import type { Instant } from '../time/instant.ts';

/** One way to pay for a car at a hammer price, and what it is expected to earn then. */
export interface PayWay {
  readonly pool: 'cash' | 'line';
  /** Own cash that it ties up: all-in and recon, less what the lender advances; whole cents, 0 or more. */
  readonly cash: number;
  /** What it draws on the floor line; whole cents, 0 for own cash. */
  readonly line: number;
  /** Expected profit; whole cents. */
  readonly profit: number;
}

/** What the user decided about a lot. */
export type PlanChoice =
  /** "I want this one": its money is held for it until it closes. */
  | 'pinned'
  /** No bid on it. */
  | 'skipped'
  /** Its max bid stands, whatever the plan says. */
  | 'plan-ignored';

/** A lot as the plan needs it. */
export interface PlanLot {
  readonly id: string;
  /** What to call it in a sentence. */
  readonly name: string;
  /** Null while nobody knows. */
  readonly close: Instant | null;
  /** The close that was known before, where it moved. */
  readonly closeBefore?: Instant;
  /** The stand-alone max bid, on its own increments; null when no price meets the rules, or it can't be worked out. */
  readonly maxBid: Cents | null;
  readonly increments: Increments;
  /** The hammer price at which it would earn nothing, as it stands now. Above 0. */
  readonly zeroProfit: Cents;
  /** Every way to pay at a price on the increments, at least one. Own cash alone where the lender does not take the title. */
  readonly waysAt: (price: Cents) => readonly PayWay[];
  readonly group: MarketGroup;
  /** The bid that stands at the sale; absent where none is known. */
  readonly priceNow?: Cents;
  /** The bid that stands is ours. */
  readonly leading?: boolean;
  /** The proxy that we have in. */
  readonly proxy?: Cents;
  /** Bids are handed in unseen, and the winner pays his own. */
  readonly sealed?: boolean;
  readonly choice?: PlanChoice;
  /** Nobody has stated its title. */
  readonly untitled?: boolean;
}
