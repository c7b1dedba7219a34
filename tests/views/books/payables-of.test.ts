import fc from 'fast-check';
import { expect, test } from 'vitest';
import { purchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { cents, sumCents } from '../../../src/domain/money/cents.ts';
import { addDays } from '../../../src/domain/time/calendar-day.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { billPayment } from '../../../src/views/books/bill-payment.ts';
import { payablesOf } from '../../../src/views/books/payables-of.ts';
import { lotNumber, randomCars } from '../../domain/books/random-car.ts';

const LATER = '2027-12-31' as LocalDate;
const SETUP = { venues: [], vendors: [] };

test('what is owed to all vendors together is what the folders say is owed, whatever was recorded', () => {
  fc.assert(
    fc.property(randomCars(5), (cars) => {
      const folders = cars.map(({ name, undoneOn, ...car }) =>
        purchaseFolder(
          {
            ...car,
            costs: car.costs.map((cost) => ({ ...cost, lot: car.lot, entry: cost.key })),
            facts: { model: name, venueName: 'Saguaro Sale Yard' },
            won: { hammer: cents(100), date: '2026-08-20' as LocalDate },
            expected: null,
            papers: [],
            outcome: undefined,
            ...(undoneOn !== undefined && { undoneOn }),
          },
          LATER,
        ),
      );
      const found = payablesOf(folders, SETUP, LATER);
      expect(found.net).toBe(sumCents(folders.map(({ owed }) => owed)));
      for (const bill of found.inOrder) {
        expect(bill.open).toBeGreaterThan(0);
        expect(sumCents(billPayment(bill.id, bill.open, found.sharesOf(bill.id)).map((line) => line.cents))).toBe(
          bill.open,
        );
      }
    }),
  );
});

test('one bill for three cars is one bill; paying a part leaves the rest of it, shared by what each car still owes', () => {
  const bill = (n: number, amount: number) =>
    purchaseFolder(
      {
        lot: lotNumber(n),
        facts: {},
        won: { hammer: cents(100), date: '2026-11-01' as LocalDate },
        expected: null,
        costs: [
          {
            ...{
              entry: 'e',
              lot: lotNumber(n),
              key: `e/${n}`,
              cost: 'transport' as const,
              label: 'Truck',
              cents: cents(amount),
            },
            ...{ date: '2026-11-18' as LocalDate, paid: 'owed' as const, payee: 'Two Forks Auto Haul' },
          },
        ],
        payments:
          n === 1
            ? [{ key: 'p', cents: cents(amount), date: '2026-12-15' as LocalDate, payee: 'TWO FORKS auto haul' }]
            : [],
        floor: [],
        papers: [],
      },
      LATER,
    );
  const folders = [bill(1, 43_334), bill(2, 43_333), bill(3, 43_333)];
  const found = payablesOf(
    folders,
    { venues: [], vendors: [{ name: 'Two Forks Auto Haul', terms: { by: 'days', days: 15 } }] },
    addDays('2026-12-15' as LocalDate, 1),
  );
  expect(found.inOrder.map(({ open, dueOn }) => [open, dueOn])).toEqual([[86_666, '2026-12-03']]);
  expect(billPayment('e', cents(50_001), found.sharesOf('e')).map((line) => line.cents)).toEqual([25_001, 25_000]);
});
