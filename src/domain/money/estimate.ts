import * as z from 'zod/mini';
import { positiveCentsSchema } from './cents.ts';
import { PPM, ppm, sharePpmSchema } from './rate.ts';

/** An amount with its doubt: `low` and `high` are read as one in ten below and one in ten above, `likely` as the mean. */
export const estimateSchema = z
  .strictObject({
    low: z.optional(positiveCentsSchema),
    likely: positiveCentsSchema,
    high: z.optional(positiveCentsSchema),
  })
  .check(
    z.refine((e) => (e.low ?? e.likely) <= e.likely && e.likely <= (e.high ?? e.likely), {
      error: 'low must not be above likely, nor likely above high',
    }),
  );
export type Estimate = z.infer<typeof estimateSchema>;

/**
 * One thing to put right, and the chance that it turns out to be needed. Here `likely` is the most likely amount rather
 * than the mean: repairs overrun more than they underrun, and `expectedRecon` allows for it.
 */
export const reconLineSchema = z.strictObject({
  label: z.string().check(z.minLength(1), z.maxLength(80)),
  amount: estimateSchema,
  chance: z._default(sharePpmSchema, ppm(PPM)),
});
export type ReconLine = z.infer<typeof reconLineSchema>;
