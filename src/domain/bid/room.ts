import { type Cents, cents } from '../money/cents.ts';
import type { Increments } from '../price/increments.ts';

/**
 * What is left between the price and the max bid:
 * - `left`: the next bid is within it, or no price is known;
 * - `over`, `at`: the price is past it, or has reached it;
 * - `next-over`: the price is below it, and the next bid is not;
 * - `no-price`: no price works, so nothing is to be bid;
 * - `unknown`: the max bid can't be worked out.
 */
export type Room =
  | { readonly is: 'left' }
  | { readonly is: 'over'; readonly by: Cents }
  | { readonly is: 'at' }
  | { readonly is: 'next-over'; readonly next: Cents }
  | { readonly is: 'no-price' }
  | { readonly is: 'unknown' };

/**
 * @param maxBid null or 0 when no price works; undefined when it can't be worked out
 * @param increments of the sale; without them the next bid is any higher one
 */
export function roomUnder(
  maxBid: Cents | null | undefined,
  price: Cents | undefined,
  increments: Increments | undefined,
): Room {
  if (maxBid === undefined) return { is: 'unknown' };
  if (maxBid === null || maxBid === 0) return { is: 'no-price' };
  if (price === undefined || price === 0) return { is: 'left' };
  if (price > maxBid) return { is: 'over', by: cents(price - maxBid) };
  if (price === maxBid) return { is: 'at' };
  const next = nextBid(price, increments);
  return next > maxBid ? { is: 'next-over', next } : { is: 'left' };
}

/** Whether a bid could still be raised, as far as anybody knows. */
export const hasRoom = ({ is }: Room): boolean => is === 'left' || is === 'unknown';

/** One step above the price, wherever that stands: an odd price is not first rounded to the sale's own steps. */
function nextBid(price: Cents, increments: Increments | undefined): Cents {
  const step = increments?.findLast(({ fromCents }) => fromCents <= price)?.stepCents ?? 1;
  return cents(price + step);
}
