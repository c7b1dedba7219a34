import * as z from 'zod/mini';
import { accountKeySchema } from '../../accounts/accounts.ts';
import { lotIdSchema } from '../../lot/lot.ts';
import { centsSchema } from '../../money/cents.ts';
import { localDateSchema } from '../../time/local-date.ts';
import { monthSchema } from '../month.ts';

/** One side of a transaction: above zero is a debit, below zero a credit. */
export const postingSchema = z.strictObject({ account: accountKeySchema, cents: centsSchema });
export type Posting = z.infer<typeof postingSchema>;

/** One line of the double-entry journal. Its postings add up to nothing. */
export const transactionSchema = z.strictObject({
  /** What it stands for; the same after a change, so that a change can be told. */
  key: z.string().check(z.minLength(1), z.maxLength(120)),
  lot: lotIdSchema,
  date: localDateSchema,
  /** What happened, in words. */
  text: z.string().check(z.maxLength(300)),
  postings: z.array(postingSchema),
  /** Who sent the bill, or was paid. */
  payee: z.optional(z.string().check(z.maxLength(120))),
  /** The number of the bill, the invoice, the check or the transfer. */
  number: z.optional(z.string().check(z.maxLength(120))),
  /** The closed month in which it should have been; it is booked later because that month's figures stay. */
  corrects: z.optional(monthSchema),
});
export type Transaction = z.infer<typeof transactionSchema>;
