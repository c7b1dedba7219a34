import type { Closing } from './closing.ts';

/**
 * What one close says of the rivals' limits, in natural logarithms of price ÷ our zero-profit hammer. M₁ is the
 * strongest rival's limit and M₂ the second strongest's.
 */
export type Reading =
  /** M₁ = x. */
  | { readonly says: 'strongest-at'; readonly x: number }
  /** M₁ ≤ x. */
  | { readonly says: 'strongest-below'; readonly x: number }
  /** M₂ = x: two rivals fought on, and the winner's own limit stays hidden. */
  | { readonly says: 'second-at'; readonly x: number }
  /** M₂ ≤ x < M₁: our bid set the price that the winner paid. */
  | { readonly says: 'between'; readonly x: number }
  /** M₁ > x. */
  | { readonly says: 'strongest-above'; readonly x: number };

/**
 * Reads a close. A lost lot's final price is what the *second* strongest rival would pay: read as the winner's limit it
 * makes the chance of winning 17 to 23 points too high (order statistics of symmetric private values: Paarsch 1992;
 * Athey & Haile 2002 on what the transaction price identifies).
 * @returns undefined where the close says nothing, or its amounts can't be compared
 */
export function readingOf({ zeroProfit, step, bid, sealed, ending }: Closing): Reading | undefined {
  if (!(zeroProfit > 0)) return undefined;
  if (sealed) return unseenReading(zeroProfit, bid, ending);
  const at = (price: number): number => Math.log(price / zeroProfit);
  switch (ending.was) {
    case 'won': {
      if (!(ending.price > 0)) return undefined;
      if (ending.unopposed) return { says: 'strongest-below', x: at(ending.price) };
      // We paid one step more than the strongest rival would. A price of one step leaves him below any price.
      const rival = ending.price - step;
      return rival > 0 ? { says: 'strongest-at', x: at(rival) } : { says: 'strongest-below', x: at(ending.price) };
    }
    case 'lost': {
      if (!(ending.price > 0)) return undefined;
      // A price below our bid, at which another bought, means that our bid was not in.
      const ours = bid !== undefined && bid > 0 && bid <= ending.price && ending.price <= bid + step;
      return ours ? { says: 'between', x: at(bid) } : { says: 'second-at', x: at(ending.price) };
    }
    case 'lost-unknown':
      return bid === undefined || bid <= 0 ? undefined : { says: 'strongest-above', x: at(bid) };
    case 'no-sale': {
      const least = Math.max(bid ?? 0, ending.high ?? 0);
      return least > 0 ? { says: 'strongest-above', x: at(least) } : undefined;
    }
  }
}

/** Where bids are handed in unseen: what is paid is the winner's own bid, and most often nobody tells the others. */
function unseenReading(zeroProfit: number, bid: number | undefined, ending: Closing['ending']): Reading | undefined {
  const at = (price: number): number => Math.log(price / zeroProfit);
  switch (ending.was) {
    case 'won':
      return ending.price > 0 ? { says: 'strongest-below', x: at(ending.price) } : undefined;
    case 'lost':
      return ending.price > 0 ? { says: 'strongest-at', x: at(ending.price) } : undefined;
    case 'lost-unknown':
    case 'no-sale':
      // Nobody saw the others' bids: only that one of them, or the reserve, was above ours.
      return bid === undefined || bid <= 0 ? undefined : { says: 'strongest-above', x: at(bid) };
  }
}
