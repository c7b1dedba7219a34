import * as z from 'zod/mini';
import { positiveCentsSchema } from '../money/cents.ts';
import { sharePpmSchema } from '../money/rate.ts';

export const CLAIM_ABOUT = [
  'transmission',
  'drive',
  'trim',
  'packages',
  'title',
  'mileage',
  'one-owner',
  'other',
] as const;
export type ClaimAbout = (typeof CLAIM_ABOUT)[number];

/** What there is to show for a statement, from nothing to certainty, and its opposite. */
export const CLAIM_EVIDENCE = ['stated', 'vin-agrees', 'seen', 'confirmed', 'refuted'] as const;
export type ClaimEvidence = (typeof CLAIM_EVIDENCE)[number];

/** Something a listing states that carries money. */
export const claimSchema = z.strictObject({
  about: z.enum(CLAIM_ABOUT),
  /** The statement as the listing makes it. */
  statement: z.string().check(z.minLength(1), z.maxLength(200)),
  evidence: z._default(z.enum(CLAIM_EVIDENCE), 'stated'),
  worthIfFalse: positiveCentsSchema.check(z.describe('how much less the car is worth if it is false; whole cents')),
  /** The buyer's own figure, in place of the one that goes with the evidence. */
  chanceFalse: z.optional(sharePpmSchema.check(z.describe('chance that it is false, ppm'))),
  /** What was seen, who was asked. */
  note: z.optional(z.string().check(z.maxLength(400))),
});
export type Claim = z.infer<typeof claimSchema>;

export const claimsSchema = z.array(claimSchema).check(z.maxLength(50));
