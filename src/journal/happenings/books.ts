import * as z from 'zod/mini';
import {
  costLineSchema,
  costsSchema,
  documentSchema,
  floorMoveSchema,
  outcomeSchema,
  paperSchema,
  paymentSchema,
} from '../../domain/books/booking.ts';
import { invoiceMappingSchema } from '../../domain/books/invoice/invoice-mapping.ts';
import { monthSchema } from '../../domain/books/month.ts';
import { transactionSchema } from '../../domain/books/post/transaction.ts';
import { lotIdSchema } from '../../domain/lot/lot.ts';
import { centsSchema } from '../../domain/money/cents.ts';
import { localDateSchema } from '../../domain/time/local-date.ts';
import { entryIdSchema } from '../ids.ts';

/** What the bookkeeper books. All of it is about the books as a whole: one bill may be for several cars. */
export const BOOKS = [
  /** A bill that was typed in. */
  z.strictObject({ kind: z.literal('costs-booked'), ...costsSchema.shape }),
  /** Lines of a venue's invoice or statement, each looked at and confirmed. */
  z.strictObject({
    kind: z.literal('invoice-confirmed'),
    venueId: z.string().check(z.maxLength(200)),
    payee: z.optional(z.string().check(z.minLength(1), z.maxLength(120))),
    document: documentSchema,
    costs: z.array(
      z.strictObject({
        ...costLineSchema.shape,
        date: localDateSchema,
        number: z.optional(z.string().check(z.maxLength(120))),
      }),
    ),
    payments: z.array(
      z.strictObject({
        lot: lotIdSchema,
        cents: centsSchema,
        date: localDateSchema,
        number: z.optional(z.string().check(z.maxLength(120))),
      }),
    ),
  }),
  /** The money by which a dispute ended, once somebody confirmed it: below zero it takes that much off the car's cost. */
  z.strictObject({
    kind: z.literal('settlement-booked'),
    dispute: entryIdSchema,
    lot: lotIdSchema,
    date: localDateSchema,
    payee: z.optional(z.string().check(z.minLength(1), z.maxLength(120))),
    label: z.string().check(z.minLength(1), z.maxLength(120)),
    cents: centsSchema,
  }),
  z.strictObject({ kind: z.literal('payment-booked'), ...paymentSchema.shape }),
  z.strictObject({ kind: z.literal('floor-booked'), ...floorMoveSchema.shape }),
  /** A later one about the same car corrects it. */
  z.strictObject({ kind: z.literal('outcome-booked'), ...outcomeSchema.shape }),
  /** A paper came in, or is not there after all. */
  z.strictObject({ kind: z.literal('paper-noted'), ...paperSchema.shape }),
  /** What the columns of a venue's invoices hold; a later one for the venue replaces it. */
  z.strictObject({
    kind: z.literal('invoice-mapped'),
    venueId: z.string().check(z.maxLength(200)),
    mapping: invoiceMappingSchema,
  }),
  /** A month's figures stay from here on: all that was booked in it is written out. */
  z.strictObject({
    kind: z.literal('month-closed'),
    month: monthSchema,
    by: z.string().check(z.minLength(1), z.maxLength(80)),
    transactions: z.array(transactionSchema),
  }),
] as const;
/** What can be booked. */
export type BookedHappening = z.infer<(typeof BOOKS)[number]>;
