import fc from 'fast-check';
import type { BankLine } from '../../../../src/domain/books/bank/bank-line.ts';
import type { BookMove } from '../../../../src/domain/books/bank/book-move.ts';
import { cents } from '../../../../src/domain/money/cents.ts';
import { addDays } from '../../../../src/domain/time/calendar-day.ts';
import type { LocalDate } from '../../../../src/domain/time/local-date.ts';

export const day = (text: string) => text as LocalDate;
const PAYEES = ['Saguaro Flats Dealer Sale', 'Bluff Haulers', 'Bluff Street Shop', 'The lender', undefined] as const;

/** Few amounts, days and numbers, so that much may be each other. */
const amount = fc.constantFrom(-40_000, -25_000, -65_000, -12_345, -15_000, 40_000, 25_000).map(cents);
const date = fc.integer({ min: 0, max: 25 }).map((days) => addDays(day('2026-11-01'), days));
const number = fc.option(fc.constantFrom('1041', '1042', '1043'), { nil: undefined });
const what = fc.constantFrom('payment', 'refund', 'returned', 'cost', 'payoff', 'sale');

export const moves: fc.Arbitrary<BookMove[]> = fc
  .array(fc.record({ date, cents: amount, payee: fc.constantFrom(...PAYEES), number, what }), { maxLength: 14 })
  .map((all) => all.map((one, i): BookMove => ({ ...one, key: `m${i}`, keys: [`m${i}/0`] }) as BookMove));

const words = fc.constantFrom(
  'ACH DEBIT SAGUARO FLATS',
  'CHECK',
  'BLUFF HAUL 1042',
  'WIRE OUT BLUFF STREET',
  'RETURNED ITEM BLUFF HAULERS',
  'DEPOSIT',
  'QUARTZ POWER',
);
export const lines: fc.Arbitrary<BankLine[]> = fc
  .array(fc.record({ date, cents: amount, text: words, check: number }), { maxLength: 14 })
  .map((all) =>
    all.map(({ check, ...one }, i): BankLine => ({ ...one, key: `l${i}`, ...(check !== undefined && { check }) })),
  );
