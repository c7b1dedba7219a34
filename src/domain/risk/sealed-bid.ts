import type { Cents } from '../money/cents.ts';
import type { PriceGrid } from '../price/price-grid.ts';

export interface SealedBid {
  readonly bid: Cents;
  /** Chance of winning × what is left at that price. */
  readonly worth: number;
}

/**
 * What to bid where the winner pays his own bid and nobody sees another's: not up to the last price that pays, but where
 * the chance of winning times what is left is largest. Every price is looked at, so that fee steps cannot mislead it;
 * of equal ones the lowest is taken.
 * @param winChance chance that a bid wins, 0 to 1
 * @param surplus expected profit beyond what is required when it is won at that price
 * @returns undefined when no price with a chance of winning leaves anything
 */
export function sealedBid(
  grid: PriceGrid,
  winChance: (price: Cents) => number,
  surplus: (price: Cents) => number,
): SealedBid | undefined {
  let best: SealedBid | undefined;
  for (let index = 0; index < grid.size; index++) {
    const bid = grid.priceAt(index);
    const worth = winChance(bid) * surplus(bid);
    if (worth > (best?.worth ?? 0)) best = { bid, worth };
  }
  return best;
}
