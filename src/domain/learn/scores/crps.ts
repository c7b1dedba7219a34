import type { Lognormal } from '../../statistics/lognormal.ts';
import { chanceBelow } from '../../statistics/lognormal.ts';
import { normalCdf, normalQuantile } from '../../statistics/normal.ts';

/**
 * The continuous ranked probability score of a lognormal forecast, in the unit of the amount: by how much the whole range
 * missed what happened. For a forecast without any spread it is the plain error; a range that is too wide pays for it as
 * one that is too narrow does (Gneiting & Raftery 2007). Closed form: Baringhaus & Franz 2004.
 * @param actual above 0
 */
export function crpsOfLognormal(forecast: Lognormal, actual: number): number {
  const { mean, sigma } = forecast;
  if (sigma === 0) return Math.abs(actual - mean);
  const z = Math.log(actual / mean) / sigma + sigma / 2;
  return actual * (2 * normalCdf(z) - 1) - 2 * mean * (normalCdf(z - sigma) + normalCdf(sigma / Math.SQRT2) - 1);
}

/** Panels of Simpson's rule on either side of what happened; twice as many change less than a cent in a thousand dollars. */
const PANELS = 200;

/**
 * The same where nothing above `cap` was thought possible: all of the chance that lies above it is put on it. By
 * Simpson's rule over the definition, the integral of (F(x) − [x ≥ actual])².
 * @param cap above 0
 */
export function crpsUnderCap(forecast: Lognormal, cap: number, actual: number): number {
  const { mean, sigma } = forecast;
  if (sigma === 0) return Math.abs(actual - Math.min(mean, cap));
  // Below the first ten-thousandth of a millionth there is nothing to add.
  const least = mean * Math.exp(-(sigma ** 2) / 2 + sigma * normalQuantile(1e-10));
  const split = Math.min(actual, cap);
  const below = simpson(Math.min(least, split), split, (x) => chanceBelow(forecast, x) ** 2);
  const above = simpson(split, cap, (x) => (1 - chanceBelow(forecast, x)) ** 2);
  return below + above + Math.max(0, actual - cap);
}

function simpson(from: number, to: number, of: (x: number) => number): number {
  if (to <= from) return 0;
  const step = (to - from) / (2 * PANELS);
  let sum = of(from) + of(to);
  for (let i = 1; i < 2 * PANELS; i++) sum += (i % 2 === 1 ? 4 : 2) * of(from + i * step);
  return (sum * step) / 3;
}
