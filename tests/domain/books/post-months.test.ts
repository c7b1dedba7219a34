import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { STARTING_BOOKKEEPING } from '../../../src/domain/accounts/accounts.ts';
import type { Month } from '../../../src/domain/books/month.ts';
import { type CarBookings, lotTransactions } from '../../../src/domain/books/post/lot-transactions.ts';
import {
  balances,
  type ClosedMonth,
  inMonth,
  postMonths,
  toClose,
} from '../../../src/domain/books/post/post-months.ts';
import type { Transaction } from '../../../src/domain/books/post/transaction.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { lotNumber, randomCars } from './random-car.ts';

const { treatment } = STARTING_BOOKKEEPING;
const all = (cars: readonly CarBookings[]) => cars.flatMap((car) => lotTransactions(car, treatment));
const month = (text: string) => text as Month;

const bill = (key: string, date: string, amount: number): Transaction => ({
  key,
  lot: lotNumber(1),
  date: date as LocalDate,
  text: 'Buy fee · Lot 218',
  postings: [
    { account: 'inventory', cents: cents(amount) },
    { account: 'payable', cents: cents(-amount) },
  ],
});
const close = (name: string, current: readonly Transaction[], before: readonly ClosedMonth[] = []): ClosedMonth => ({
  month: month(name),
  transactions: toClose(postMonths(current, before), month(name)),
});

describe('after October was closed', () => {
  const october = close('2026-10', [bill('a', '2026-10-05', 450)]);

  test('a late bill of October counts in November and points back', () => {
    const posted = postMonths([bill('a', '2026-10-05', 450), bill('b', '2026-10-20', 75)], [october]);
    expect(inMonth(posted, month('2026-10'))).toEqual(october.transactions);
    expect(inMonth(posted, month('2026-11'))).toMatchObject([
      { date: '2026-11-01', corrects: '2026-10', text: 'Recorded after the close of October 2026: Buy fee · Lot 218' },
    ]);
  });

  test('a changed bill counts with its difference, and one that was taken back with all of it', () => {
    const changed = inMonth(postMonths([bill('a', '2026-10-05', 475)], [october]), month('2026-11'));
    expect(changed).toMatchObject([{ corrects: '2026-10', postings: [{ cents: 25 }, { cents: -25 }] }]);
    const gone = inMonth(postMonths([], [october]), month('2026-11'));
    expect(gone).toMatchObject([{ corrects: '2026-10', postings: [{ cents: -450 }, { cents: 450 }] }]);
    expect(gone[0]?.text).toMatch(/^Undone in October 2026/);
  });

  test('a correction that is closed in its turn is corrected in the month after that', () => {
    const november = close('2026-11', [bill('a', '2026-10-05', 475)], [october]);
    const same = postMonths([bill('a', '2026-10-05', 475)], [october, november]);
    expect(inMonth(same, month('2026-12'))).toEqual([]);
    const back = postMonths([bill('a', '2026-10-05', 450)], [october, november]);
    expect(inMonth(back, month('2026-12'))).toMatchObject([
      { corrects: '2026-10', postings: [{ cents: -25 }, { cents: 25 }] },
    ]);
  });

  test('what belongs to November stays in November', () => {
    const posted = postMonths([bill('a', '2026-10-05', 450), bill('c', '2026-11-09', 10)], [october]);
    expect(inMonth(posted, month('2026-11'))).toEqual([bill('c', '2026-11-09', 10)]);
  });
});

test('whatever is booked, changed or taken back after closes, closed months stay and all months come to what the bookings come to', () => {
  fc.assert(
    fc.property(randomCars(3), randomCars(3), randomCars(3), (first, second, third) => {
      const september = close('2026-09', all(first));
      const october = close('2026-10', all(second), [september]);
      const posted = postMonths(all(third), [september, october]);
      // Nothing of September or before it appears later than that without saying so.
      const upTo = (last: string) => september.transactions.filter(({ date }) => date.startsWith(last));
      for (const name of ['2026-08', '2026-09']) expect(inMonth(posted, month(name))).toEqual(upTo(name));
      expect(inMonth(posted, month('2026-10'))).toEqual(october.transactions);
      const byDate = (a: [string, number], b: [string, number]) => (a[0] < b[0] ? -1 : 1);
      const late = posted.transactions.filter(({ date }) => date < '2026-11-01');
      const before = new Set([...september.transactions, ...october.transactions].map(({ key, date }) => key + date));
      expect(late.filter(({ key, date }) => !before.has(key + date))).toEqual([]);
      expect([...balances(posted.transactions)].sort(byDate)).toEqual([...balances(all(third))].sort(byDate));
    }),
  );
});
