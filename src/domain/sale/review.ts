import { type Cents, cents } from '../money/cents.ts';
import type { Increments } from '../price/increments.ts';
import { nextPrice } from '../price/price-grid.ts';
import type { Result } from './result.ts';

/** A result held against the max bid of its moment. */
export interface Review {
  /** What another paid, or we did. Absent where nobody bought it or the price is unknown. */
  readonly hammer?: Cents;
  /** Hammer less our max bid: above nothing it went past where we stop. Absent without either figure. */
  readonly overMax?: Cents;
  /**
   * For a lot that another won: whether the bid that would have beaten him still met our rule, by the max bid of that
   * moment. Absent where one of the figures is.
   */
  readonly wouldHavePaid?: boolean;
}

/**
 * Holds a result against the max bid that stood when it was noted. To win what another bought one has to go one step past
 * his price, so the lot was within reach only if that next price was within our max bid.
 * @param maxBid null when no price paid; undefined when none was known
 * @param increments of the sale; without them the next price is taken to be any higher one
 */
export function reviewResult(result: Result, maxBid: Cents | null | undefined, increments?: Increments): Review {
  if (result.ended !== 'won' && result.ended !== 'lost') return {};
  const hammer = result.hammerCents;
  if (hammer === undefined) return {};
  if (maxBid === undefined) return { hammer };
  if (maxBid === null) return result.ended === 'lost' ? { hammer, wouldHavePaid: false } : { hammer };
  const overMax = cents(hammer - maxBid);
  if (result.ended === 'won') return { hammer, overMax };
  const toBeat = increments === undefined ? hammer + 1 : nextPrice(increments, hammer);
  return { hammer, overMax, wouldHavePaid: toBeat <= maxBid };
}
