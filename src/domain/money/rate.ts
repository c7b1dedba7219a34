import * as z from 'zod/mini';

/** Parts in one whole: a rate of 80,000 ppm is 8%. */
export const PPM = 1_000_000;

/**
 * A rate as whole parts per million, 0 to 1,000%. Finer than basis points because floor-plan rates are quoted in
 * eighths of a percent (8.625% is 86,250).
 */
export const ppmSchema = z
  .int()
  .check(z.gte(0), z.lte(10 * PPM), z.describe('parts per million (80000 is 8%)'))
  .brand<'Ppm'>();

/** A share of a whole, 0 to 100%. */
export const sharePpmSchema = z
  .int()
  .check(z.gte(0), z.lte(PPM), z.describe('parts per million, at most the whole (800000 is 80%)'))
  .brand<'Ppm'>();

export type Ppm = z.infer<typeof ppmSchema>;

/** @throws RangeError when `value` is not a whole number from 0 to 10,000,000. */
export function ppm(value: number): Ppm {
  if (!Number.isInteger(value) || value < 0 || value > 10 * PPM) throw new RangeError(`not a rate in ppm: ${value}`);
  return value as Ppm;
}

/** Parts in one whole of a {@link Factor}. */
export const FACTOR_UNIT = 1_000_000_000_000;

/**
 * A multiplier as whole million-millionths. Expected holding cost per dollar comes out of an infinite sum; it is
 * rounded to this grid once, so that everything after it is exact whole-number arithmetic that anyone can repeat. So fine
 * that it moves no cent of any car: at hundred-millionths a rule that was met exactly could fail by one.
 */
export type Factor = number & z.$brand<'Factor'>;

/** @throws RangeError when `value` is negative or not finite. */
export function factor(value: number): Factor {
  if (!(value >= 0 && value <= 100)) throw new RangeError(`not a factor from 0 to 100: ${value}`);
  return Math.round(value * FACTOR_UNIT) as Factor;
}
