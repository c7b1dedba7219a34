import * as z from 'zod/mini';
import { positiveCentsSchema, ZERO } from '../money/cents.ts';
import { ppm, ppmSchema } from '../money/rate.ts';
import { ROUNDING_MODES } from '../money/rounding.ts';
import { localDateSchema } from '../time/local-date.ts';

/**
 * One step of a fee table: `clamp(flat + round(price × rate), minimum, maximum)`. It holds from `fromCents`, included,
 * up to the next band's, excluded: a price exactly on an edge pays the upper band.
 */
export const feeBandSchema = z
  .strictObject({
    fromCents: positiveCentsSchema.check(z.describe('lowest hammer price of the band, included; whole cents')),
    flatCents: z._default(positiveCentsSchema.check(z.describe('flat part of the fee; whole cents')), ZERO),
    ratePpm: z._default(ppmSchema.check(z.describe('share of the hammer price, ppm (80000 is 8%)')), ppm(0)),
    minimumCents: z.optional(positiveCentsSchema.check(z.describe('the band never charges less; whole cents'))),
    maximumCents: z.optional(positiveCentsSchema.check(z.describe('the band never charges more; whole cents'))),
  })
  .check(
    z.refine((band) => (band.minimumCents ?? 0) <= (band.maximumCents ?? Number.POSITIVE_INFINITY), {
      error: 'the minimum is above the maximum',
    }),
    z.describe('flat + rate × price, between minimum and maximum; from its own start up to the start of the next band'),
  );
export type FeeBand = z.infer<typeof feeBandSchema>;

/** A fee that depends on the hammer price: bands from 0 upward, each starting where the one before ends. */
export const feeTableSchema = z.strictObject({
  label: z.string().check(z.minLength(1), z.maxLength(80), z.describe('the line’s name on a worksheet')),
  rounding: z._default(z.enum(ROUNDING_MODES).check(z.describe('how a fraction of a cent is rounded')), 'half-up'),
  bands: z.array(feeBandSchema).check(
    z.minLength(1),
    z.refine((bands) => bands[0]?.fromCents === 0, {
      error: 'the first band must start at 0',
    }),
    z.refine((bands) => bands.every((band, i) => i === 0 || band.fromCents > (bands[i - 1]?.fromCents ?? 0)), {
      error: 'each band must start above the one before it',
    }),
  ),
});
export type FeeTable = z.infer<typeof feeTableSchema>;

/** A charge that is the same at every price (a gate pass, a document fee). */
export const chargeSchema = z.strictObject({
  label: z.string().check(z.minLength(1), z.maxLength(80)),
  cents: positiveCentsSchema,
});
export type Charge = z.infer<typeof chargeSchema>;

/** What a schedule charged from one date to another, both included; open-ended where a date is missing. */
export const feeEditionSchema = z
  .strictObject({
    validFrom: z.optional(
      localDateSchema.check(z.describe('first sale date of these rates, at the venue; YYYY-MM-DD')),
    ),
    validTo: z.optional(localDateSchema.check(z.describe('last sale date of these rates, at the venue; YYYY-MM-DD'))),
    tables: z.array(feeTableSchema).check(z.describe('fees by hammer price; all of them are charged')),
    charges: z._default(z.array(chargeSchema).check(z.describe('charges that are the same at every price')), []),
  })
  .check(
    z.refine((edition) => (edition.validFrom ?? '') <= (edition.validTo ?? '9999'), {
      error: 'rates must not end before they start',
    }),
  );
export type FeeEdition = z.infer<typeof feeEditionSchema>;

export const feeScheduleSchema = z.strictObject({
  id: z.string().check(z.minLength(1), z.maxLength(60)),
  name: z.string().check(z.minLength(1), z.maxLength(80)),
  editions: z.array(feeEditionSchema).check(z.minLength(1)),
});
export type FeeSchedule = z.infer<typeof feeScheduleSchema>;
