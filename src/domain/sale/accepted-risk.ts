import * as z from 'zod/mini';
import { positiveCentsSchema } from '../money/cents.ts';
import { instantSchema } from '../time/instant.ts';

/** Somebody decided to leave a bid of ours above the max bid. It holds for this amount, and down to this max bid. */
export const acceptedRiskSchema = z.strictObject({
  /** The bid. */
  cents: positiveCentsSchema,
  /** The max bid that it was held against; null when no price worked. */
  maxBidCents: z.nullable(positiveCentsSchema),
  why: z.string().check(z.minLength(1), z.maxLength(400)),
  at: instantSchema,
});
export type AcceptedRisk = z.infer<typeof acceptedRiskSchema>;
