import * as z from 'zod/mini';
import { positiveCentsSchema } from '../../domain/money/cents.ts';
import { bidActionSchema } from '../../domain/sale/bid-action.ts';
import { resultSchema } from '../../domain/sale/result.ts';
import { instantSchema } from '../../domain/time/instant.ts';

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
  }),
] as const;
