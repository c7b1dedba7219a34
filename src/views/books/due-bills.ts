import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import type { OpenBill } from '../../domain/books/payables/payables.ts';
import { type Cents, cents, sumCents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import { addDays } from '../../domain/time/calendar-day.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import { countWords } from '../words/count-words.ts';
import { dateInWords } from '../words/date-words.ts';
import { foldersOf } from './folders-of.ts';
import { payablesOf } from './payables-of.ts';

/** A bill that is due by now or soon. */
export interface DueBill {
  readonly key: string;
  /** "Bluff Haulers, bill no. B-7". */
  readonly what: string;
  /** "$400 still owed, was due Mon Oct 20, 36 days past due". */
  readonly more: string;
  readonly open: Cents;
  readonly dueOn: LocalDate;
  readonly late: boolean;
  /** Leads to the vendor's bills. */
  readonly hash: string;
}

export interface DueBills {
  /** Overdue, or due within a week; the longest due first. */
  readonly bills: readonly DueBill[];
  /** What is due after that, of how many bills. */
  readonly later: { readonly bills: number; readonly cents: Cents };
}

const WEEK = 7;

/** Payables of these cars that press, as of a day. */
export function dueBills(
  folders: readonly PurchaseFolder[],
  setup: Pick<Setup, 'venues' | 'vendors'>,
  today: LocalDate,
): DueBills {
  const { inOrder, nameOf } = payablesOf(folders, setup, today);
  const until = addDays(today, WEEK);
  const later = inOrder.filter(({ dueOn }) => dueOn > until);
  return {
    bills: inOrder.filter(({ dueOn }) => dueOn <= until).map((bill) => said(bill, nameOf(bill.vendor))),
    later: { bills: later.length, cents: sumCents(later.map(({ open }) => open)) },
  };
}

/** The same, from lots and the books alone: what was expected of a purchase changes nothing in what is owed. */
export const dueBillsOf = (lots: readonly LotState[], books: BooksState, setup: Setup, today: LocalDate): DueBills =>
  dueBills(foldersOf(lots, books, new Map(), setup, today).folders, setup, today);

/** Those in which all words of a search stand: vendor, number. */
export const billsWith = (bills: readonly DueBill[], search: string): readonly DueBill[] =>
  bills.filter(({ what }) =>
    plainWords(search)
      .split(' ')
      .every((word) => plainWords(what).includes(word)),
  );

function said(bill: OpenBill, vendor: string): DueBill {
  const { id, number, open, dueOn, daysPastDue, cents: whole } = bill;
  const late = daysPastDue > 0;
  const when = late
    ? `was due ${dateInWords(dueOn)}, ${countWords(daysPastDue, 'day', 'days')} past due`
    : `due ${dateInWords(dueOn)}`;
  const owed = `${formatMoney(open)}${open < whole ? ` of ${formatMoney(cents(whole))}` : ''}`;
  return {
    key: id,
    what: number === undefined ? `${vendor}, bill of ${dateInWords(bill.date)}` : `${vendor}, bill no. ${number}`,
    more: `${owed}, ${when}`,
    open,
    dueOn,
    late,
    hash: `#/books/payables/${encodeURIComponent(bill.vendor)}`,
  };
}
