import type { Estimate } from '../money/estimate.ts';
import { PPM } from '../money/rate.ts';
import { normalQuantile } from '../statistics/normal.ts';
import type { Estimation } from './estimation.ts';

/** However narrow a range is typed, a guess never counts as surer than one part in a hundred beside comparables. */
const SUREST_GUESS = 0.01;

/** How far off the level of a guess may be: a standard deviation of its logarithm, 0.01 or more. */
export function guessSpread(guess: Estimate, settings: Estimation): number {
  return Math.max(SUREST_GUESS, typedSpread(guess) ?? settings.guessSpreadPpm / PPM);
}

/**
 * The standard deviation of the log price that a typed range stands for, low and high each read as one in ten. With one
 * end only, the other is taken as far away.
 * @returns undefined without a range
 */
export function typedSpread({ low, likely, high }: Estimate): number | undefined {
  if (low === undefined && high === undefined) return undefined;
  const log = (amount: number) => Math.log(Math.max(1, amount));
  const middle = log(likely);
  const down = low === undefined ? undefined : middle - log(low);
  const up = high === undefined ? undefined : log(high) - middle;
  return ((down ?? up ?? 0) + (up ?? down ?? 0)) / 2 / normalQuantile(0.9);
}
