import * as z from 'zod/mini';
import { lotIdSchema } from '../lot/lot.ts';
import { centsSchema, positiveCentsSchema } from '../money/cents.ts';
import { DISPUTE_REASONS } from '../setup/after-sale-rules.ts';
import { instantSchema } from '../time/instant.ts';

const words = (longest: number) => z.string().check(z.minLength(1), z.maxLength(longest));
/** Something that is still to be got: a paper, a picture, an answer. */
const needs = z.array(words(120)).check(z.maxLength(30));
const nextSchema = z.strictObject({ what: words(200), at: instantSchema });

/** What an argument over a sale is about. */
export const disputeSchema = z.strictObject({
  /** Whose claim it is. */
  side: z.enum(['ours', 'theirs']),
  reason: z.enum(DISPUTE_REASONS),
  /** What happened, in the user's words. */
  words: words(4000),
  /** What is asked for: by us, or of us. */
  askedCents: z.optional(positiveCentsSchema),
  /** When it came up; of another's claim, when his notice came. */
  at: instantSchema,
  /** A deadline that the venue named for this dispute; it overrides the one from its rule. */
  dueAt: z.optional(instantSchema),
  /** What is to be done next and until when, where the other side set a date. */
  next: z.optional(nextSchema),
  needs: z._default(needs, []),
});
export type Dispute = z.infer<typeof disputeSchema>;

/** Fields of a dispute to set; `clear` empties the optional ones. */
export const disputeChangeSchema = z.strictObject({
  reason: z.optional(z.enum(DISPUTE_REASONS)),
  words: z.optional(words(4000)),
  askedCents: z.optional(positiveCentsSchema),
  dueAt: z.optional(instantSchema),
  next: z.optional(nextSchema),
  needs: z.optional(needs),
});
export type DisputeChange = z.infer<typeof disputeChangeSchema>;
export const CLEARABLE = ['askedCents', 'dueAt', 'next'] as const;

/**
 * What was done or said. `told` is our claim brought to the venue and `answered` our answer to another's: each meets the
 * deadline for it. `got` ticks one of the needs off.
 */
export const disputeStepSchema = z.strictObject({
  what: z.enum(['told', 'answered', 'heard', 'talk', 'offer', 'got', 'note']),
  at: instantSchema,
  words: z.optional(words(4000)),
  /** With whom, by his role. */
  who: z.optional(words(120)),
  /** Of an offer. */
  cents: z.optional(positiveCentsSchema),
  /** Which need was met. */
  need: z.optional(words(120)),
  /** SHA-256 of files that are kept with the lot. */
  files: z.optional(z.array(z.string().check(z.regex(/^[0-9a-f]{64}$/))).check(z.maxLength(20))),
});
export type DisputeStep = z.infer<typeof disputeStepSchema>;

/**
 * How it ended. After `sale-undone` and `sold-again` the sale does not stand: what was paid is to come back, and its cash and
 * its place are free.
 */
export const disputeOutcomeSchema = z.strictObject({
  ended: z.enum(['upheld', 'not-upheld', 'price-adjusted', 'sale-undone', 'sold-again', 'dropped']),
  at: instantSchema,
  /** What comes to us by it, beside a price that is given back; negative when we pay. */
  cents: z.optional(centsSchema),
  words: z.optional(words(4000)),
  /** The lot as it was offered again, where it is watched. */
  newLot: z.optional(lotIdSchema),
});
export type DisputeOutcome = z.infer<typeof disputeOutcomeSchema>;
export type DisputeEnding = DisputeOutcome['ended'];

/** A dispute with all that happened in it. */
export interface DisputeRecord extends Dispute {
  readonly steps: readonly DisputeStep[];
  readonly outcome?: DisputeOutcome | undefined;
}

/** Whether a way to end leaves no sale behind. */
export const undoesSale = (ended: DisputeEnding): boolean => ended === 'sale-undone' || ended === 'sold-again';

/** What is still to be got, in the order in which it was listed. */
export function stillNeeded({ needs, steps }: Pick<DisputeRecord, 'needs' | 'steps'>): readonly string[] {
  const got = new Set(steps.map(({ need }) => need));
  return needs.filter((need) => !got.has(need));
}
