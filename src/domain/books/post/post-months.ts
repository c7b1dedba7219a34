import type { AccountKey } from '../../accounts/accounts.ts';
import { groupBy } from '../../group-by.ts';
import { type Cents, cents } from '../../money/cents.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { firstDayOf, type Month, monthInWords, monthOf, nextMonth } from '../month.ts';
import type { Posting, Transaction } from './transaction.ts';

/** A month whose figures stay, with everything that was booked in it. */
export interface ClosedMonth {
  readonly month: Month;
  readonly transactions: readonly Transaction[];
}

/** Every transaction in the month in which it counts, in the order of the days. */
export interface PostedBooks {
  readonly transactions: readonly Transaction[];
  /** The last month that is closed; everything up to it stays. */
  readonly closedTo: Month | null;
}

/**
 * Puts transactions into their months. Closed months hold what they held when they were closed. What differs from that
 * now (a bill that came late, one that was taken back, another amount) is booked on the first day of the month after, as
 * a correction that names the month where it belongs.
 * @param current what the bookings come to now
 * @param closed in the order in which they were closed
 */
export function postMonths(current: readonly Transaction[], closed: readonly ClosedMonth[]): PostedBooks {
  const frozen = closed.flatMap(({ transactions }) => transactions);
  const closedTo = closed.reduce<Month | null>(
    (last, { month }) => (last === null || month > last ? month : last),
    null,
  );
  if (closedTo === null) return { transactions: inOrder(current.filter(hasPostings)), closedTo };
  const before = byKey(frozen);
  const now = byKey(current);
  const open = firstDayOf(nextMonth(closedTo));
  const later: Transaction[] = [];
  for (const [key, transactions] of now) {
    const [first] = transactions;
    if (first === undefined) continue;
    const booked = before.get(key);
    if (booked === undefined && monthOf(first.date) > closedTo) later.push(...transactions);
    else later.push(...correction(key, first, booked, transactions, open));
  }
  for (const [key, booked] of before) {
    const [first] = booked;
    if (!now.has(key) && first !== undefined) later.push(...correction(key, first, booked, [], open));
  }
  return { transactions: inOrder([...frozen, ...later.filter(hasPostings)]), closedTo };
}

/** What one month holds. */
export const inMonth = (books: PostedBooks, month: Month): Transaction[] =>
  books.transactions.filter(({ date }) => monthOf(date) === month);

const byKey = (transactions: readonly Transaction[]) => groupBy(transactions, ({ key }) => key);

/** The difference between what should be booked and what a closed month has, if there is one. */
function correction(
  key: string,
  about: Transaction,
  booked: readonly Transaction[] | undefined,
  wanted: readonly Transaction[],
  open: LocalDate,
): Transaction[] {
  const [first] = booked ?? [];
  const month = first?.corrects ?? monthOf((first ?? about).date);
  const postings = difference(booked ?? [], wanted);
  if (postings.length === 0) return [];
  const why =
    booked === undefined
      ? 'Recorded after the close of'
      : wanted.length === 0
        ? 'Undone in'
        : 'Changed since the close of';
  // A bill that belongs to a month still to come keeps its day, even where an earlier part of it was booked before.
  const date = wanted.length > 0 && monthOf(about.date) >= monthOf(open) ? about.date : open;
  const text = `${why} ${monthInWords(month)}: ${about.text}`.slice(0, 300);
  const { payee, number } = about;
  const paper = { ...(payee !== undefined && { payee }), ...(number !== undefined && { number }) };
  return [{ key, lot: about.lot, date, text, postings, ...paper, corrects: month }];
}

function difference(booked: readonly Transaction[], wanted: readonly Transaction[]): Posting[] {
  const sums = new Map<AccountKey, number>();
  const add = (postings: readonly Posting[], sign: 1 | -1) => {
    for (const posting of postings) sums.set(posting.account, (sums.get(posting.account) ?? 0) + sign * posting.cents);
  };
  for (const { postings } of wanted) add(postings, 1);
  for (const { postings } of booked) add(postings, -1);
  return [...sums].flatMap(([account, sum]): Posting[] => (sum === 0 ? [] : [{ account, cents: cents(sum) }]));
}

const hasPostings = ({ postings }: Transaction): boolean => postings.length > 0;

const inOrder = (transactions: readonly Transaction[]): Transaction[] =>
  [...transactions].sort((a, b) => (a.date === b.date ? compare(a.key, b.key) : compare(a.date, b.date)));

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What closing a month makes stay: all of it, and of the months before it whatever is still open. */
export const toClose = ({ transactions, closedTo }: PostedBooks, month: Month): Transaction[] =>
  transactions.filter(({ date }) => monthOf(date) <= month && (closedTo === null || monthOf(date) > closedTo));

/** What each account stands at after some transactions; accounts at nothing are left out. */
export function balances(transactions: Iterable<Transaction>): Map<AccountKey, Cents> {
  const sums = new Map<AccountKey, number>();
  for (const { postings } of transactions)
    for (const { account, cents: amount } of postings) sums.set(account, (sums.get(account) ?? 0) + amount);
  return new Map([...sums].filter(([, sum]) => sum !== 0).map(([account, sum]) => [account, cents(sum)]));
}
