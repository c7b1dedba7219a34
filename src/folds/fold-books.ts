import type { BookedDocument, CarOutcome, CostLineBooked, FloorMove, PaperNote } from '../domain/books/booking.ts';
import type { InvoiceMapping } from '../domain/books/invoice/invoice-mapping.ts';
import type { ClosedMonth } from '../domain/books/post/post-months.ts';
import type { LotId } from '../domain/lot/lot.ts';
import type { Cents } from '../domain/money/cents.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import type { Entry } from '../journal/entry.ts';
import type { EntryId } from '../journal/ids.ts';
import { countingInOrder } from './undo.ts';

/** Who wrote something down, and when: what a booking can be taken back by. */
export interface Noted {
  readonly entry: EntryId;
  readonly notedAt: Instant;
  readonly author: string;
}

/** One line of a bill that was booked. */
export interface NotedCost extends CostLineBooked, Noted {
  /** Stands for the line, also after a month was closed with it. */
  readonly key: string;
  readonly date: LocalDate;
  readonly paid: 'owed' | 'bank';
  readonly payee?: string | undefined;
  readonly document?: BookedDocument | undefined;
  /** Of the money by which a dispute ended: the entry that opened it. */
  readonly dispute?: EntryId | undefined;
}

export interface NotedPayment extends Noted {
  readonly key: string;
  readonly lot: LotId;
  readonly cents: Cents;
  readonly date: LocalDate;
  readonly payee?: string | undefined;
  readonly document?: BookedDocument | undefined;
}

export type NotedFloorMove = FloorMove & Noted & { readonly key: string };
export type NotedOutcome = CarOutcome & Noted;
export type NotedPaper = PaperNote & Noted;

export interface NotedClose extends ClosedMonth, Noted {
  /** By his own word, who may be another than the one whose browser it is. */
  readonly by: string;
}

/** The books as the journal leaves them. */
export interface BooksState {
  readonly costs: readonly NotedCost[];
  readonly payments: readonly NotedPayment[];
  readonly floor: readonly NotedFloorMove[];
  readonly outcomes: ReadonlyMap<LotId, NotedOutcome>;
  readonly papers: readonly NotedPaper[];
  readonly mappings: ReadonlyMap<string, InvoiceMapping>;
  /** In the order in which they were closed. A month that was closed twice, on two devices, counts as it was first. */
  readonly closes: readonly NotedClose[];
}

export const EMPTY_BOOKS: BooksState = {
  costs: [],
  payments: [],
  floor: [],
  outcomes: new Map(),
  papers: [],
  mappings: new Map(),
  closes: [],
};

/** As foldLots: the entries may come in any order, from any number of devices, and twice. */
export function foldBooks(entries: Iterable<Entry>): BooksState {
  const costs: NotedCost[] = [];
  const payments: NotedPayment[] = [];
  const floor: NotedFloorMove[] = [];
  const outcomes = new Map<LotId, NotedOutcome>();
  const papers = new Map<string, NotedPaper>();
  const mappings = new Map<string, InvoiceMapping>();
  const closes: NotedClose[] = [];
  for (const entry of countingInOrder(entries)) {
    const { happening } = entry;
    const noted: Noted = { entry: entry.id, notedAt: entry.at, author: entry.author };
    switch (happening.kind) {
      case 'costs-booked': {
        const { date, paid, payee, document } = happening;
        happening.lines.forEach((line, i) => {
          costs.push({ ...line, ...noted, key: `${entry.id}/${i}`, date, paid, payee, document });
        });
        break;
      }
      case 'invoice-confirmed': {
        const { payee, document } = happening;
        const paper = (number: string | undefined) => ({ ...document, ...(number !== undefined && { number }) });
        happening.costs.forEach(({ number, ...line }, i) => {
          costs.push({ ...line, ...noted, key: `${entry.id}/${i}`, paid: 'owed', payee, document: paper(number) });
        });
        happening.payments.forEach(({ number, ...line }, i) => {
          payments.push({ ...line, ...noted, key: `${entry.id}/p${i}`, payee, document: paper(number) });
        });
        break;
      }
      case 'settlement-booked': {
        const { kind: _, ...settlement } = happening;
        costs.push({ ...settlement, ...noted, key: entry.id, cost: 'other', paid: 'owed' });
        break;
      }
      case 'payment-booked': {
        const { date, payee, document } = happening;
        happening.lines.forEach((line, i) => {
          payments.push({ ...line, ...noted, key: `${entry.id}/${i}`, date, payee, document });
        });
        break;
      }
      case 'floor-booked': {
        const { kind: _, ...move } = happening;
        floor.push({ ...move, ...noted, key: entry.id });
        break;
      }
      case 'outcome-booked': {
        const { kind: _, ...outcome } = happening;
        outcomes.set(outcome.lot, { ...outcome, ...noted });
        break;
      }
      case 'paper-noted': {
        const { kind: _, ...paper } = happening;
        papers.set(`${paper.lot}/${paper.paper}`, { ...paper, ...noted });
        break;
      }
      case 'invoice-mapped':
        mappings.set(happening.venueId, happening.mapping);
        break;
      case 'month-closed': {
        const { month, by, transactions } = happening;
        if (!closes.some((close) => close.month >= month)) closes.push({ month, by, transactions, ...noted });
        break;
      }
    }
  }
  return { costs, payments, floor, outcomes, papers: [...papers.values()], mappings, closes };
}
