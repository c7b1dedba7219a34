import * as z from 'zod/mini';
import { positiveCentsSchema } from '../money/cents.ts';

/** From this hammer price upward the sale moves in steps of this size, counted from `fromCents`. */
export const incrementBandSchema = z.strictObject({
  fromCents: positiveCentsSchema.check(z.describe('lowest price of the band, included; whole cents')),
  stepCents: positiveCentsSchema.check(
    z.gte(1),
    z.describe('step between prices, counted from fromCents; whole cents'),
  ),
});

/** The prices a sale can land on: bands from 0 upward, each starting above the one before it. */
export const incrementsSchema = z.array(incrementBandSchema).check(
  z.minLength(1),
  z.refine((bands) => bands[0]?.fromCents === 0, {
    error: 'the first increment band must start at 0',
  }),
  z.refine((bands) => bands.every((band, i) => i === 0 || band.fromCents > (bands[i - 1]?.fromCents ?? 0)), {
    error: 'each increment band must start above the one before it',
  }),
);
export type Increments = z.infer<typeof incrementsSchema>;
