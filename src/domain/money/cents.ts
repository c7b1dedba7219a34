import * as z from 'zod/mini';

/** The largest amount the tool handles: ten billion dollars, far inside exact integer arithmetic. */
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
 * @throws RangeError when `value` is not a whole number within ±{@link LARGEST_CENTS}: our own mistake, not the user's.
 */
export function cents(value: number): Cents {
  if (!Number.isInteger(value) || Math.abs(value) > LARGEST_CENTS) {
    throw new RangeError(`not a whole number of cents: ${value}`);
  }
  // -0 would print as "-$0" and break equality checks.
  return (value === 0 ? 0 : value) as Cents;
}

export const ZERO = cents(0);

export function sumCents(amounts: Iterable<Cents>): Cents {
  let total = 0;
  for (const amount of amounts) total += amount;
  return cents(total);
}
