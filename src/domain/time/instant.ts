import * as z from 'zod/mini';

/** The last moment that a Date can hold. */
const LATEST = 8.64e15;

/** A moment, as whole milliseconds since 1970-01-01T00:00Z. Always UTC; what a wall clock shows is worked out from it. */
export const instantSchema = z
  .int()
  .check(z.gte(0), z.lte(LATEST), z.describe('milliseconds since 1970-01-01T00:00:00Z'))
  .brand<'Instant'>();
export type Instant = z.infer<typeof instantSchema>;

/** @throws RangeError when `value` is not a whole number of milliseconds a Date can hold. */
export function instant(value: number): Instant {
  if (!Number.isInteger(value) || value < 0 || value > LATEST) throw new RangeError(`not an instant: ${value}`);
  return value as Instant;
}

/** The moment so many milliseconds later, or earlier where that is below 0; never beyond what a Date can hold. */
export const shifted = (at: Instant, by: number): Instant => instant(Math.max(0, Math.min(LATEST, at + by)));
