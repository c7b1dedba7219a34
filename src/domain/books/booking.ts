import * as z from 'zod/mini';
import { costKindSchema } from '../accounts/cost-kind.ts';
import { lotIdSchema } from '../lot/lot.ts';
import { centsSchema, positiveCentsSchema } from '../money/cents.ts';
import { localDateSchema } from '../time/local-date.ts';
import { bankLineKeySchema } from './bank/bank-line.ts';

const shortText = z.string().check(z.minLength(1), z.maxLength(120));
/** Lines of a bank statement that this was recorded from: it is matched with them. */
const fromBank = z.optional(z.array(bankLineKeySchema).check(z.minLength(1)));
const amountSchema = centsSchema.check(z.refine((cents) => cents !== 0, { error: 'an amount of nothing' }));

/** One line of a bill, for one car. */
export const costLineSchema = z.strictObject({
  lot: lotIdSchema,
  cost: costKindSchema,
  /** As the bill words it. */
  label: shortText,
  /** Negative for a credit. */
  cents: amountSchema,
  /** The expected line of the folder that it answers. */
  against: z.optional(z.string().check(z.maxLength(120))),
});
export type CostLineBooked = z.infer<typeof costLineSchema>;

/** The paper that a booking rests on. */
export const documentSchema = z.strictObject({
  /** Its number, as printed. */
  number: z.optional(z.string().check(z.maxLength(120))),
  /** The name of the file that it came in. */
  file: z.optional(z.string().check(z.maxLength(260))),
});
export type BookedDocument = z.infer<typeof documentSchema>;

/** A bill: one line, many lines, or one amount that was shared out among several cars. */
export const costsSchema = z.strictObject({
  /** The day of the bill, in the store's zone. */
  date: localDateSchema,
  /** Who sent it. */
  payee: z.optional(shortText),
  /** `owed` until a payment or the lender settles it; `bank` when it was paid at once. */
  paid: z.enum(['owed', 'bank']),
  document: z.optional(documentSchema),
  /** By when it is to be paid, where the bill says so. */
  due: z.optional(localDateSchema),
  lines: z.array(costLineSchema).check(z.minLength(1)),
  /** How one amount became several lines. */
  shared: z.optional(z.strictObject({ totalCents: centsSchema, by: z.enum(['equal', 'hammer', 'own-weights']) })),
  bank: fromBank,
});

/** Money to (or, negative, back from) the one who sent the bills of these cars. */
export const paymentSchema = z.strictObject({
  date: localDateSchema,
  payee: z.optional(shortText),
  document: z.optional(documentSchema),
  bank: fromBank,
  lines: z
    .array(
      z.strictObject({
        lot: lotIdSchema,
        cents: amountSchema,
        /** The bill that it is set against, by its id; absent where only the car is known. */
        bill: z.optional(z.string().check(z.minLength(1), z.maxLength(160))),
      }),
    )
    .check(z.minLength(1)),
});

/** What a booked line really is. What is left out stays as it was booked. */
export const lineChangeSchema = z.strictObject({
  cents: z.optional(amountSchema),
  date: z.optional(localDateSchema),
  label: z.optional(shortText),
  cost: z.optional(costKindSchema),
  number: z.optional(z.string().check(z.minLength(1), z.maxLength(120))),
});
export type LineChange = z.infer<typeof lineChangeSchema>;

/** The lender pays the sale for a car (`draw`), or is paid back, wholly or in part (`payoff`). */
export const floorMoveSchema = z.strictObject({
  lot: lotIdSchema,
  move: z.enum(['draw', 'payoff']),
  cents: positiveCentsSchema.check(z.gte(1)),
  date: localDateSchema,
  document: z.optional(documentSchema),
});
export type FloorMove = z.infer<typeof floorMoveSchema>;

/** How a car went away again. */
export const outcomeSchema = z.strictObject({
  lot: lotIdSchema,
  date: localDateSchema,
  priceCents: positiveCentsSchema,
  /** `retail` to a customer, `business` to one who works with it, `wholesale` to another dealer or through a sale. */
  buyer: z.enum(['retail', 'business', 'wholesale']),
  /** What the dealer's own deal sheet says it grossed, where that was noted. */
  grossCents: z.optional(centsSchema),
});
export type CarOutcome = z.infer<typeof outcomeSchema>;

/** Papers that belong in a folder. */
export const PAPERS = ['title', 'bill-of-sale', 'odometer-statement', 'transport-receipt'] as const;
export const paperSchema = z.strictObject({
  lot: lotIdSchema,
  paper: z.enum(PAPERS),
  /** The day it came in; absent when it is not there after all. */
  date: z.optional(localDateSchema),
});
export type PaperNote = z.infer<typeof paperSchema>;
