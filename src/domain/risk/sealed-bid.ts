import type { Cents } from '../money/cents.ts';
import type { PriceGrid } from '../price/price-grid.ts';

export interface SealedBid {
  readonly bid: Cents;
  /** Chance of winning × what is left at that price. */
  readonly worth: number;
}

/** With more prices than this, which steps of a cent make, only some are looked at first. */
const MOST_PRICES = 20_000;

/**
 * What to bid where the winner pays his own bid and nobody sees another's: not up to the last price that pays, but where
 * the chance of winning times what is left is largest. Every price is looked at, so that fee steps cannot mislead it;
 * of equal ones the lowest is taken. Where there are more than {@link MOST_PRICES}, evenly spread ones are looked at, and
 * then all that lie about the best of them.
 * @param winChance chance that a bid wins, 0 to 1
 * @param surplus expected profit beyond what is required when it is won at that price
 * @returns undefined when no price with a chance of winning leaves anything
 */
export function sealedBid(
  grid: PriceGrid,
  winChance: (price: Cents) => number,
  surplus: (price: Cents) => number,
): SealedBid | undefined {
  const bestOf = (from: number, to: number, stride: number): (SealedBid & { readonly index: number }) | undefined => {
    let best: (SealedBid & { readonly index: number }) | undefined;
    for (let index = from; index < to; index += stride) {
      const bid = grid.priceAt(index);
      const worth = winChance(bid) * surplus(bid);
      if (worth > (best?.worth ?? 0)) best = { bid, worth, index };
    }
    return best;
  };
  const stride = Math.ceil(grid.size / MOST_PRICES);
  const rough = bestOf(0, grid.size, stride);
  const best =
    rough === undefined || stride === 1
      ? rough
      : bestOf(Math.max(0, rough.index - stride + 1), Math.min(grid.size, rough.index + stride), 1);
  return best && { bid: best.bid, worth: best.worth };
}
