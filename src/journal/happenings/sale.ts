import * as z from 'zod/mini';
import { positiveCentsSchema } from '../../domain/money/cents.ts';
import { acceptedRiskSchema } from '../../domain/sale/accepted-risk.ts';
import { bidActionSchema } from '../../domain/sale/bid-action.ts';
import { resultSchema } from '../../domain/sale/result.ts';
import { instantSchema } from '../../domain/time/instant.ts';
import { entryIdSchema } from '../ids.ts';

/** What happens at the sale, each about one lot. */
export const SALE = [
  /** A receipt: somebody did or saw something. */
  z.strictObject({ kind: z.literal('bid-noted'), bid: bidActionSchema }),
  /** How the lot ended. A later one corrects it. */
  z.strictObject({
    kind: z.literal('result-noted'),
    result: resultSchema,
    /** When it ended, as far as known: the close, unless the user says otherwise. */
    at: instantSchema,
    /** Who bid, and how. */
    bidder: z.optional(z.string().check(z.minLength(1), z.maxLength(80))),
    by: z.optional(z.enum(['proxy', 'live'])),
    /** What our max bid was at that moment; null when there was none. */
    maxBidCents: z.optional(z.nullable(positiveCentsSchema)),
    /** It ended before its close, by the word of him who noted it. */
    early: z.optional(z.literal(true)),
    /** Whether our bid was in, where the price says that it may not have been. */
    bidWasIn: z.optional(z.boolean()),
    /** The result that it knowingly corrects. Two results of two browsers, neither of which names the other, are in doubt. */
    corrects: z.optional(entryIdSchema),
  }),
  /** A bid of ours above the max bid was left as it is. */
  z.strictObject({ kind: z.literal('risk-accepted'), ...acceptedRiskSchema.shape }),
] as const;
