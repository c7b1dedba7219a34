import * as z from 'zod/mini';
import { positiveCentsSchema } from '../money/cents.ts';

/** How a lot's sale ended, as far as we know. Amounts are hammer prices, before any fee. */
export const resultSchema = z.discriminatedUnion('ended', [
  /** We are the buyer. */
  z.strictObject({ ended: z.literal('won'), hammerCents: positiveCentsSchema }),
  /** Another is; at what price is not always said. */
  z.strictObject({ ended: z.literal('lost'), hammerCents: z.optional(positiveCentsSchema) }),
  /** The reserve was not met; `highCents` is the highest bid. */
  z.strictObject({ ended: z.literal('not-sold'), highCents: z.optional(positiveCentsSchema) }),
  /** Our bid is the highest and waits for the seller's word. */
  z.strictObject({ ended: z.literal('pending'), bidCents: z.optional(positiveCentsSchema) }),
  /** Taken out of the sale before it closed. */
  z.strictObject({ ended: z.literal('withdrawn') }),
  /** It closed while nobody looked, and how is not known. */
  z.strictObject({ ended: z.literal('not-watched') }),
]);
export type Result = z.infer<typeof resultSchema>;
export type Ending = Result['ended'];
