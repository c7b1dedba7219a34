import * as z from 'zod/mini';

/**
 * The largest amount that is kept: ten billion dollars. Sums and products of kept amounts may be larger; whole numbers stay
 * exact up to nine thousand times as much.
 */
export const LARGEST_CENTS = 1_000_000_000_000;

/** Whole cents of one currency. Never a fraction, never dollars. */
export const centsSchema = z
  .int()
  .check(z.gte(-LARGEST_CENTS), z.lte(LARGEST_CENTS), z.describe('whole cents (12345 is $123.45)'))
  .brand<'Cents'>();

/** Whole cents, zero or more. */
export const positiveCentsSchema = z
  .int()
  .check(z.gte(0), z.lte(LARGEST_CENTS), z.describe('whole cents, 0 or more (12345 is $123.45)'))
  .brand<'Cents'>();

export type Cents = z.infer<typeof centsSchema>;

/**
 * Brands a whole number of cents.
 * @throws RangeError when `value` is no whole number that can be counted exactly: our own mistake, not the user's.
 */
export function cents(value: number): Cents {
  if (!Number.isSafeInteger(value)) throw new RangeError(`an amount came out as ${value} cents`);
  // -0 would print as "-$0" and break equality checks.
  return (value === 0 ? 0 : value) as Cents;
}

export const ZERO = cents(0);

/**
 * An estimated amount, rounded to whole cents and held within ±{@link LARGEST_CENTS}: a spread has no end of its own.
 * @throws RangeError when `value` is not a number: our own mistake.
 */
export function roundedCents(value: number): Cents {
  return cents(Math.max(-LARGEST_CENTS, Math.min(LARGEST_CENTS, Math.round(value))));
}

export function sumCents(amounts: Iterable<Cents>): Cents {
  let total = 0;
  for (const amount of amounts) total += amount;
  return cents(total);
}
