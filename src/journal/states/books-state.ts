import type { BookedDocument, CarOutcome, CostLineBooked, FloorMove, PaperNote } from '../../domain/books/booking.ts';
import type { InvoiceMapping } from '../../domain/books/invoice/invoice-mapping.ts';
import type { ClosedMonth } from '../../domain/books/post/post-months.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import type { Happening } from '../happening.ts';
import type { EntryId } from '../ids.ts';
import type { BankDraft, BankState } from './bank-state.ts';
import type { Noted } from './noted.ts';

/** One line of a bill that was booked. */
export interface NotedCost extends CostLineBooked, Noted {
  /** Stands for the line, also after a month was closed with it. */
  readonly key: string;
  readonly date: LocalDate;
  /** By when it is to be paid, where the bill says so. */
  readonly due?: LocalDate | undefined;
  readonly paid: 'owed' | 'bank';
  readonly payee?: string | undefined;
  readonly document?: BookedDocument | undefined;
  /** Of the money by which a dispute ended: the entry that opened it. */
  readonly dispute?: EntryId | undefined;
  /** The entry that corrected it last. */
  readonly corrected?: EntryId | undefined;
}

export interface NotedPayment extends Noted {
  readonly key: string;
  /** The bill that it is set against. */
  readonly bill?: string | undefined;
  readonly lot: LotId;
  readonly cents: Cents;
  readonly date: LocalDate;
  readonly payee?: string | undefined;
  readonly document?: BookedDocument | undefined;
  /** The entry that corrected it last. */
  readonly corrected?: EntryId | undefined;
}

export type NotedFloorMove = FloorMove & Noted & { readonly key: string };
export type NotedOutcome = CarOutcome & Noted;
export type NotedPaper = PaperNote & Noted;

export interface NotedClose extends ClosedMonth, Noted {
  /** By his own word, who may be another than the one whose browser it is. */
  readonly by: string;
}

/** A bill, an invoice or a payment that was undone as a whole. */
export interface UndoneBooking {
  readonly entry: EntryId;
  /** Undoing this one brings it back. */
  readonly undoneBy: EntryId;
  readonly undoneAt: Instant;
  /** Who undid it. */
  readonly author: string;
  readonly happening: Extract<Happening, { readonly kind: 'costs-booked' | 'invoice-confirmed' | 'payment-booked' }>;
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
  /** What was undone as a whole, the last one first. */
  readonly undone: readonly UndoneBooking[];
  readonly bank: BankState;
}

/** The same while they are folded: a copy of it all for each of thousands of bookings would take too long. */
export interface BooksDraft {
  readonly costs: NotedCost[];
  readonly payments: NotedPayment[];
  readonly floor: NotedFloorMove[];
  readonly outcomes: Map<LotId, NotedOutcome>;
  /** By lot and paper; the last word on each counts. */
  readonly papers: Map<string, NotedPaper>;
  readonly mappings: Map<string, InvoiceMapping>;
  readonly closes: NotedClose[];
  readonly bank: BankDraft;
}
