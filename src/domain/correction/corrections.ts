import * as z from 'zod/mini';
import { ppmSchema, sharePpmSchema } from '../money/rate.ts';
import { plainWords } from '../text/plain-words.ts';
import { instantSchema } from '../time/instant.ts';

/** When a correction was switched on, and how many cases it rested on then. */
const switchedOn = {
  since: instantSchema,
  cases: z.int().check(z.gte(0)),
};

/** A multiplier; beyond these it is a slip of the keyboard and not experience. */
const factorPpm = ppmSchema.check(
  z.gte(200_000),
  z.lte(5_000_000),
  z.describe('times the estimate, ppm (980000 is 0.98)'),
);

const reconFactorSchema = z.strictObject({
  line: z.string().check(z.minLength(1), z.maxLength(120), z.describe('the recon line, as its label says')),
  factorPpm,
});

/**
 * The corrections that are switched on, each with the value that it had when it was: a max bid never moves because a car
 * sold somewhere, only because somebody switched.
 */
export const correctionsSchema = z.strictObject({
  slopes: z.optional(
    z.strictObject({
      milesSlopePpm: sharePpmSchema,
      milesSlopeDoubtPpm: sharePpmSchema,
      yearSlopePpm: sharePpmSchema,
      yearSlopeDoubtPpm: sharePpmSchema,
      ...switchedOn,
    }),
  ),
  asking: z.optional(
    z.strictObject({
      ratioPpm: ppmSchema.check(z.gte(500_000), z.lte(1_500_000)),
      doubtPpm: sharePpmSchema,
      ...switchedOn,
    }),
  ),
  retailLevel: z.optional(z.strictObject({ factorPpm, ...switchedOn })),
  retailSpread: z.optional(z.strictObject({ factorPpm, ...switchedOn })),
  recon: z.optional(
    z.strictObject({ lines: z.array(reconFactorSchema).check(z.minLength(1), z.maxLength(200)), ...switchedOn }),
  ),
  days: z.optional(
    z.strictObject({
      medianDays: z.number().check(z.gte(1), z.lte(3650), z.describe('half of the cars sell within so many days')),
      countsFor: z.number().check(z.gte(1), z.lte(100_000), z.describe('how many cars sold that rests on')),
      ...switchedOn,
    }),
  ),
  canceled: z.optional(z.strictObject({ chancePpm: sharePpmSchema, ...switchedOn })),
  win: z.optional(
    z.strictObject({
      haircutPpm: z
        .int()
        .check(
          z.gte(-500_000),
          z.lte(500_000),
          z.describe('taken off the break-even hammer price, ppm; negative adds'),
        ),
      ...switchedOn,
    }),
  ),
  /** After so many days a case counts for half. */
  halfLifeDays: z.optional(z.int().check(z.gte(30), z.lte(3650))),
});
export type Corrections = z.infer<typeof correctionsSchema>;

/** In the order in which they are applied, and in which the worksheet takes them off. */
export const CORRECTION_IDS = [
  'slopes',
  'asking',
  'retailLevel',
  'retailSpread',
  'recon',
  'days',
  'canceled',
  'win',
] as const satisfies readonly (keyof Corrections)[];
export type CorrectionId = (typeof CORRECTION_IDS)[number];

/** What each takes off, as the worksheet names it. */
export const CORRECTION_LABELS: Readonly<Record<CorrectionId, string>> = {
  slopes: 'Correction: miles and age',
  asking: 'Correction: asking prices',
  retailLevel: 'Correction: retail',
  retailSpread: 'Correction: spread of retail',
  recon: 'Correction: recon',
  days: 'Correction: days to sell',
  canceled: 'Correction: canceled sales',
  win: 'Correction: cars that you win',
};

/** The ones that are on, in their order. */
export const switchedOnIn = (corrections: Corrections | undefined): readonly CorrectionId[] =>
  CORRECTION_IDS.filter((id) => corrections?.[id] !== undefined);

/** Those of `ids` alone, with their values. */
export function onlySome(corrections: Corrections, ids: readonly CorrectionId[]): Corrections {
  return Object.fromEntries(Object.entries(corrections).filter(([key]) => ids.some((id) => id === key)));
}

/** What an estimate of a recon line is multiplied with; 1 where nothing is known of such lines. */
export function reconFactor(recon: Corrections['recon'], label: string): number {
  if (recon === undefined) return 1;
  const words = plainWords(label);
  const found = recon.lines.find(({ line }) => plainWords(line) === words);
  return found === undefined ? 1 : found.factorPpm / 1_000_000;
}
