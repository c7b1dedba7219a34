import { incompleteBeta } from './incomplete-beta.ts';
import { normalQuantile } from './normal.ts';

/**
 * Chance that Student's t with `freedom` degrees of freedom is below `t` (DLMF 8.17 with A&S 26.7.1).
 * @param freedom above 0, not necessarily whole
 */
export function tCdf(t: number, freedom: number): number {
  const square = t * t;
  // Two equivalent forms: the first keeps its digits near the middle, the second out in the tail.
  const tail =
    square < 1
      ? 0.5 - 0.5 * incompleteBeta(square / (freedom + square), 0.5, freedom / 2)
      : 0.5 * incompleteBeta(freedom / (freedom + square), freedom / 2, 0.5);
  return t > 0 ? 1 - tail : tail;
}

/**
 * The value below which Student's t falls with chance `p`, to about 1e-12: bisection on {@link tCdf} between brackets
 * that are widened until they hold it.
 * @param p above 0 and below 1
 * @param freedom above 0
 * @throws RangeError for any other `p`
 */
export function tQuantile(p: number, freedom: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`not a chance between 0 and 1: ${p}`);
  if (p === 0.5) return 0;
  if (p < 0.5) return -tQuantile(1 - p, freedom);
  // t has heavier tails than the normal, so the normal's quantile is always a lower bracket.
  let low = normalQuantile(p);
  let high = low + 1;
  while (tCdf(high, freedom) < p) {
    low = high;
    high *= 2;
  }
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (tCdf(middle, freedom) < p) low = middle;
    else high = middle;
  }
}
