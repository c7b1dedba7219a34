import * as z from 'zod/mini';
import { ppm, ppmSchema, sharePpmSchema } from '../money/rate.ts';

const share = (fallback: number, meaning: string) =>
  z._default(sharePpmSchema.check(z.describe(meaning)), ppm(fallback));

/** A share that is divided by or whose logarithm is taken: nothing would make no sense. */
const someShare = (fallback: number, meaning: string) =>
  z._default(sharePpmSchema.check(z.gte(1000), z.describe(meaning)), ppm(fallback));

/**
 * How sure a statement is that has nothing but this to show for it. Each figure is an assumption of this tool, there to
 * be replaced by the dealer's own experience.
 */
export const doubtSchema = z.strictObject({
  statedPpm: share(100_000, 'chance that a statement is false when nothing backs it, ppm'),
  vinAgreesPpm: share(40_000, 'chance that it is false although the VIN agrees with it, ppm'),
  seenPpm: share(20_000, 'chance that it is false although it was seen in a photo, ppm'),
  confirmedPpm: share(0, 'chance that it is false although somebody looked and confirmed it, ppm'),
});
export type Doubt = z.infer<typeof doubtSchema>;

/**
 * How retail is worked out from comparables, and how doubt is counted. The mileage slope lies between two published
 * samples (−4.9% and −4.2% per 10,000 miles); every other figure is an assumption that the dealer can change.
 */
export const estimationSchema = z.strictObject({
  milesSlopePpm: share(45_000, 'what 10,000 more miles take off the price, ppm'),
  milesSlopeDoubtPpm: share(15_000, 'how far off that may be, one standard deviation, ppm'),
  yearSlopePpm: share(110_000, 'what one model year older takes off the price, ppm'),
  yearSlopeDoubtPpm: share(30_000, 'how far off that may be, one standard deviation, ppm'),
  carSpreadPpm: someShare(70_000, 'how far one car sells from another of its kind, one standard deviation, ppm'),
  carSpreadWeight: z._default(
    z.number().check(z.gte(1), z.lte(1000), z.describe('how many comparables that spread counts for')),
    6,
  ),
  guessSpreadPpm: someShare(100_000, 'how far off an estimate without a range may be, one standard deviation, ppm'),
  askingRatioPpm: z._default(
    ppmSchema.check(z.gte(500_000), z.lte(1_500_000), z.describe('selling price as a share of the asking price, ppm')),
    ppm(970_000),
  ),
  askingRatioDoubtPpm: share(30_000, 'how far off that may be, one standard deviation, ppm'),
  twinStretchPpm: share(150_000, 'how much longer a car takes to sell for each similar one in stock, ppm'),
  doubt: z._default(doubtSchema, doubtSchema.parse({})),
});
export type Estimation = z.infer<typeof estimationSchema>;

/** What holds until the setup says otherwise. */
export const DEFAULT_ESTIMATION: Estimation = estimationSchema.parse({});
