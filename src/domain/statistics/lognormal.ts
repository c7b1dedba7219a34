import { normalCdf } from './normal.ts';

/**
 * A lognormal amount, given by its mean, so that a wider spread moves its median down and not its mean up: anchored the
 * other way, more doubt would raise a bid.
 */
export interface Lognormal {
  /** Above 0. */
  readonly mean: number;
  /** Standard deviation of the logarithm, 0 or more; at 0 the amount is certain. */
  readonly sigma: number;
}

/** Chance that the amount is below `x`. */
export function chanceBelow({ mean, sigma }: Lognormal, x: number): number {
  if (x <= 0) return 0;
  if (sigma === 0) return mean < x ? 1 : 0;
  return normalCdf(Math.log(x / mean) / sigma + sigma / 2);
}

/** Expected shortfall E[(x − R)⁺]: how far the amount falls short of `x`, counting nothing when it does not. */
export function shortfallBelow({ mean, sigma }: Lognormal, x: number): number {
  if (x <= 0) return 0;
  if (sigma === 0) return Math.max(0, x - mean);
  const d = Math.log(x / mean) / sigma + sigma / 2;
  return Math.max(0, x * normalCdf(d) - mean * normalCdf(d - sigma));
}

/** E[min(R, cap)] = cap − E[(cap − R)⁺]: the mean of an amount that cannot go above `cap`. */
export function meanBelowCap(amount: Lognormal, cap: number): number {
  return cap - shortfallBelow(amount, cap);
}
