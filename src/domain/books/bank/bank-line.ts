import * as z from 'zod/mini';
import { centsSchema } from '../../money/cents.ts';
import { localDateSchema } from '../../time/local-date.ts';

/** What stands for a line of an account, the same each time it is read. */
export const bankLineKeySchema = z.string().check(z.minLength(1), z.maxLength(200));

/** One line of a bank statement. */
export const bankLineSchema = z.strictObject({
  key: bankLineKeySchema,
  /** The day on which the bank booked it, as the bank writes it: no zone moves it. */
  date: localDateSchema,
  /** Below zero: money out. */
  cents: centsSchema,
  /** Everything that the bank says of it. */
  text: z.string().check(z.maxLength(300)),
  /** The number of the check, where it is one. */
  check: z.optional(z.string().check(z.minLength(1), z.maxLength(40))),
  /** An earlier line that this one corrects, which no longer counts. */
  replaces: z.optional(bankLineKeySchema),
});
export type BankLine = z.infer<typeof bankLineSchema>;

/** One match of lines at the bank with what was recorded. */
export const bankMatchSchema = z.strictObject({
  lines: z.array(bankLineKeySchema).check(z.minLength(1)),
  /** Keys of the recorded lines: one check may have paid many. */
  booked: z.array(z.string().check(z.minLength(1), z.maxLength(160))).check(z.minLength(1)),
});
export type BankMatch = z.infer<typeof bankMatchSchema>;
