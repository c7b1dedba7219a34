import type { Cents } from '../money/cents.ts';
import type { Ppm } from '../money/rate.ts';
import type { Instant } from '../time/instant.ts';

/** A lender's line, as far as it can still be drawn. What is left out follows the setup. */
export interface FloorLine {
  /** What can still be drawn; whole cents, 0 or more. */
  readonly free: Cents;
  /** Share of the price that it advances. */
  readonly advance?: Ppm;
  /** The most that it advances on one car. */
  readonly capPerCar?: Cents;
  /** `id`s of the titles it takes; a lot without a title counts as clean, which is an empty text here. */
  readonly titles?: readonly string[];
}

/** Money that comes in (above 0) or is due (below 0) at a moment. */
export interface DatedMoney {
  readonly at: Instant;
  readonly cents: Cents;
  /** Places on the lot that come free with it, as a car that is sold leaves one; 0 where left out. */
  readonly places?: number;
  /** What it is, in the user's words. */
  readonly what: string;
}

/** What there is to buy with. */
export interface Purse {
  /** Own cash now, less what is promised for won cars. Below 0 when more is promised than there is. */
  readonly cash: Cents;
  /** Absent where every car is paid from own cash. */
  readonly line?: FloorLine;
  /** Free places on the lot, whole, below 0 when it is over-full; absent where there is room enough. */
  readonly places?: number;
  /** Dated money after now, in any order. */
  readonly flows: readonly DatedMoney[];
  /** Lots that close after this moment are left to the next purse; absent for all lots. */
  readonly until?: Instant;
  /** Closes as near as this can't be reacted to one by one; milliseconds, 0 or more. */
  readonly reaction: number;
  /**
   * The chance, 0 to 1, that the bids standing at one time may together win more than the purse holds. 0 is the hard
   * rule: they never can.
   */
  readonly overChance: number;
  /** What a dollar of cash left at the end is worth, 0 to 1; 0 where left out. */
  readonly keptDollar?: number;
}
