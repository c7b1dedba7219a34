import type { Entry } from '../journal/entry.ts';
import { rowOf } from '../journal/happening.ts';
import { type BankDraft, type BankState, emptyBank } from '../journal/states/bank-state.ts';
import type { BooksDraft, BooksState } from '../journal/states/books-state.ts';
import { notedBy } from './noted-by.ts';
import { countingInOrder } from './undo.ts';
import { undoneBookings } from './undone-bookings.ts';

export const EMPTY_BOOKS: BooksState = {
  costs: [],
  payments: [],
  floor: [],
  outcomes: new Map(),
  papers: [],
  mappings: new Map(),
  closes: [],
  undone: [],
  bank: standing(emptyBank()),
};

/** As foldLots: the entries may come in any order, from any number of devices, and twice. */
export function foldBooks(entries: Iterable<Entry>): BooksState {
  const all = [...entries];
  const books: BooksDraft = {
    costs: [],
    payments: [],
    floor: [],
    outcomes: new Map(),
    papers: new Map(),
    mappings: new Map(),
    closes: [],
    bank: emptyBank(),
  };
  for (const entry of countingInOrder(all)) {
    const row = rowOf(entry.happening);
    if (row.about === 'books') row.fold(books, entry.happening, notedBy(entry));
  }
  return { ...books, papers: [...books.papers.values()], undone: undoneBookings(all), bank: standing(books.bank) };
}

/** A line that was left out and matched after that is matched. */
function standing({ gone: _, leftOut, ...bank }: BankDraft): BankState {
  for (const key of leftOut.keys()) if (!bank.lines.has(key) || bank.byLine.has(key)) leftOut.delete(key);
  return { ...bank, leftOut };
}
