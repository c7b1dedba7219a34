import * as z from 'zod/mini';
import {
  type BookedDocument,
  costLineSchema,
  costsSchema,
  documentSchema,
  floorMoveSchema,
  type LineChange,
  lineChangeSchema,
  outcomeSchema,
  paperSchema,
  paymentSchema,
} from '../../domain/books/booking.ts';
import { invoiceMappingSchema } from '../../domain/books/invoice/invoice-mapping.ts';
import { monthSchema } from '../../domain/books/month.ts';
import { transactionSchema } from '../../domain/books/post/transaction.ts';
import { type LotId, lotIdSchema } from '../../domain/lot/lot.ts';
import { centsSchema } from '../../domain/money/cents.ts';
import { localDateSchema } from '../../domain/time/local-date.ts';
import { type EntryId, entryIdSchema } from '../ids.ts';
import type { BankDraft } from '../states/bank-state.ts';
import type { Noted } from '../states/noted.ts';
import { BANK } from './bank.ts';
import { match } from './match-lines.ts';
import { aboutBooks, type ToldBy } from './row.ts';

const payee = z.optional(z.string().check(z.minLength(1), z.maxLength(120)));
const number = z.optional(z.string().check(z.maxLength(120)));
const venueId = z.string().check(z.maxLength(200));

/** What the bookkeeper books. All of it is about the books as a whole: one bill may be for several cars. */
export const BOOKS = [
  /** A bill that was typed in. */
  aboutBooks('costs-booked', costsSchema.shape, {
    fold({ costs, bank }, { date, due, paid, payee: from, document, lines, bank: read }, noted) {
      lines.forEach((line, i) => {
        costs.push({ ...line, ...noted, key: `${noted.entry}/${i}`, date, due, paid, payee: from, document });
      });
      matchWith(bank, read, lines, noted);
    },
    ofLot: withLinesOf,
    undo: 'where made',
    pack: 'everything',
  }),
  /** Lines of a venue's invoice or statement, each looked at and confirmed. */
  aboutBooks(
    'invoice-confirmed',
    {
      venueId,
      payee,
      document: documentSchema,
      costs: z.array(
        z.strictObject({
          ...costLineSchema.shape,
          date: localDateSchema,
          number,
          /** By when it is to be paid, where the invoice says so. */
          due: z.optional(localDateSchema),
        }),
      ),
      payments: z.array(z.strictObject({ lot: lotIdSchema, cents: centsSchema, date: localDateSchema, number })),
    },
    {
      fold(books, { payee: from, document, costs, payments }, noted) {
        const paper = (no: string | undefined) => ({ ...document, ...(no !== undefined && { number: no }) });
        costs.forEach(({ number: no, ...line }, i) => {
          const key = `${noted.entry}/${i}`;
          books.costs.push({ ...line, ...noted, key, paid: 'owed', payee: from, document: paper(no) });
        });
        payments.forEach(({ number: no, ...line }, i) => {
          books.payments.push({ ...line, ...noted, key: `${noted.entry}/p${i}`, payee: from, document: paper(no) });
        });
      },
      ofLot(told, lot) {
        const [costs, payments] = [of(told.costs, lot), of(told.payments, lot)];
        return costs.length + payments.length === 0 ? null : { ...told, costs, payments };
      },
      undo: 'where made',
      pack: 'everything',
    },
  ),
  /** The money by which a dispute ended, once somebody confirmed it: below zero it takes that much off the car's cost. */
  aboutBooks(
    'settlement-booked',
    {
      dispute: entryIdSchema,
      lot: lotIdSchema,
      date: localDateSchema,
      payee,
      label: z.string().check(z.minLength(1), z.maxLength(120)),
      cents: centsSchema,
    },
    {
      fold({ costs }, { kind: _, ...settlement }, noted) {
        costs.push({ ...settlement, ...noted, key: noted.entry, cost: 'other', paid: 'owed' });
      },
      ofLot: wholeIfOf,
      undo: 'where made',
      pack: 'everything',
    },
  ),
  aboutBooks('payment-booked', paymentSchema.shape, {
    fold({ payments, bank }, { date, payee: to, document, lines, bank: read }, noted) {
      lines.forEach((line, i) => {
        payments.push({ ...line, ...noted, key: `${noted.entry}/${i}`, date, payee: to, document });
      });
      matchWith(bank, read, lines, noted);
    },
    ofLot: withLinesOf,
    undo: 'where made',
    pack: 'everything',
  }),
  /** One line of a bill, an invoice or a payment that was booked: taken out alone, or corrected. A later one counts. */
  aboutBooks(
    'line-corrected',
    {
      lot: lotIdSchema,
      /** Its key, which stands for it also after a month was closed with it. */
      line: z.string().check(z.minLength(1), z.maxLength(60)),
      /** Null takes it out. */
      to: z.nullable(lineChangeSchema),
    },
    {
      fold(books, { lot, line, to }, { entry }) {
        correctLine(books.costs, { lot, line, to, entry });
        correctLine(books.payments, { lot, line, to, entry });
      },
      ofLot: wholeIfOf,
      undo: 'where made',
      pack: 'everything',
    },
  ),
  aboutBooks('floor-booked', floorMoveSchema.shape, {
    fold({ floor }, { kind: _, ...move }, noted) {
      floor.push({ ...move, ...noted, key: noted.entry });
    },
    ofLot: wholeIfOf,
    undo: 'where made',
    pack: 'everything',
  }),
  /** A later one about the same car corrects it. */
  aboutBooks('outcome-booked', outcomeSchema.shape, {
    fold({ outcomes }, { kind: _, ...outcome }, noted) {
      outcomes.set(outcome.lot, { ...outcome, ...noted });
    },
    ofLot: wholeIfOf,
    undo: 'where made',
    pack: 'everything',
  }),
  /** A paper came in, or is not there after all. */
  aboutBooks('paper-noted', paperSchema.shape, {
    fold({ papers }, { kind: _, ...paper }, noted) {
      papers.set(`${paper.lot}/${paper.paper}`, { ...paper, ...noted });
    },
    ofLot: wholeIfOf,
    undo: 'where made',
    pack: 'everything',
  }),
  /** What the columns of a venue's invoices hold; a later one for the venue replaces it. */
  aboutBooks(
    'invoice-mapped',
    { venueId, mapping: invoiceMappingSchema },
    {
      fold({ mappings }, told) {
        mappings.set(told.venueId, told.mapping);
      },
      ofLot: () => null,
      undo: 'where made',
      pack: 'everything',
    },
  ),
  /** A month's figures stay from here on: all that was booked in it is written out. */
  aboutBooks(
    'month-closed',
    {
      month: monthSchema,
      by: z.string().check(z.minLength(1), z.maxLength(80)),
      transactions: z.array(transactionSchema),
    },
    {
      fold({ closes }, { month, by, transactions }, noted) {
        if (!closes.some((close) => close.month >= month)) closes.push({ month, by, transactions, ...noted });
      },
      // It books nothing.
      ofLot: () => null,
      undo: 'where made',
      pack: 'everything',
    },
  ),
  ...BANK,
] as const;
/** What can be booked. */
export type BookedHappening = ToldBy<(typeof BOOKS)[number]>;

/** What was recorded from lines of the bank is matched with them. */
function matchWith(bank: BankDraft, read: string[] | undefined, lines: readonly unknown[], noted: Noted): void {
  if (read !== undefined) match(bank, { lines: read, booked: lines.map((_, i) => `${noted.entry}/${i}`), ...noted });
}

const of = <Line extends { readonly lot: LotId }>(lines: readonly Line[], lot: LotId): Line[] =>
  lines.filter((line) => line.lot === lot);

/** A bill with the lines that are for one car. */
function withLinesOf<Line extends { readonly lot: LotId }, Told extends { readonly lines: readonly Line[] }>(
  told: Told,
  lot: LotId,
): Told | null {
  const lines = of(told.lines, lot);
  return lines.length === 0 ? null : { ...told, lines };
}

function wholeIfOf<Told extends { readonly lot: LotId }>(told: Told, lot: LotId): Told | null {
  return told.lot === lot ? told : null;
}

interface LineBooked {
  readonly key: string;
  readonly lot: LotId;
  readonly document?: BookedDocument | undefined;
}

interface Correction {
  readonly lot: LotId;
  readonly line: string;
  readonly to: LineChange | null;
  readonly entry: EntryId;
}

/** Of a payment there is no label and no kind to correct. A line that is not there is left alone: its entry was undone. */
function correctLine<Line extends LineBooked>(lines: Line[], { lot, line, to, entry }: Correction): void {
  const at = lines.findIndex((one) => one.key === line && one.lot === lot);
  const booked = lines[at];
  if (booked === undefined) return;
  if (to === null) {
    lines.splice(at, 1);
    return;
  }
  const { number: no, label, cost, ...more } = to;
  const words = 'cost' in booked ? { ...(label !== undefined && { label }), ...(cost !== undefined && { cost }) } : {};
  const document = no === undefined ? booked.document : { ...booked.document, number: no };
  lines[at] = { ...booked, ...more, ...words, ...(document !== undefined && { document }), corrected: entry };
}
