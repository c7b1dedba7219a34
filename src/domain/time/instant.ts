import * as z from 'zod/mini';

/** A moment, as whole milliseconds since 1970-01-01T00:00Z. Always UTC; what a wall clock shows is worked out from it. */
export const instantSchema = z
  .int()
  .check(z.gte(0), z.lte(8.64e15), z.describe('milliseconds since 1970-01-01T00:00:00Z'))
  .brand<'Instant'>();
export type Instant = z.infer<typeof instantSchema>;

/** @throws RangeError when `value` is not a whole number of milliseconds a Date can hold. */
export function instant(value: number): Instant {
  if (!Number.isInteger(value) || value < 0 || value > 8.64e15) throw new RangeError(`not an instant: ${value}`);
  return value as Instant;
}
