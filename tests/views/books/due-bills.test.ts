import { expect, test } from 'vitest';
import { purchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { billsWith, dueBills } from '../../../src/views/books/due-bills.ts';
import { paymentsBy } from '../../../src/views/books/payables-of.ts';
import { lotNumber } from '../../domain/books/random-car.ts';

const day = (text: string) => text as LocalDate;
const TODAY = day('2026-11-30');

const bill = (number: string, date: string, due?: string) => ({
  ...{ entry: number, lot: lotNumber(1), key: `${number}/0`, cost: 'transport' as const, label: 'Truck' },
  ...{ cents: cents(40_000), date: day(date), paid: 'owed' as const, payee: 'Bluff Haulers', document: { number } },
  ...(due !== undefined && { due: day(due) }),
});
const folder = purchaseFolder(
  {
    ...{ lot: lotNumber(1), facts: { venueName: 'Saguaro Sale Yard' }, expected: null, floor: [], papers: [] },
    won: { hammer: cents(900_000), date: day('2026-11-01') },
    costs: [bill('B-7', '2026-10-20', '2026-11-10'), bill('B-8', '2026-11-20'), bill('B-9', '2026-11-28')],
    payments: [
      {
        ...{ key: 'p', lot: lotNumber(1), cents: cents(10_000), date: day('2026-11-25') },
        ...{ payee: 'Bluff Haulers', document: { number: '1002' } },
      },
    ],
  },
  TODAY,
);
const SETUP = { venues: [], vendors: [{ name: 'bluff haulers', terms: { by: 'days' as const, days: 15 } }] };

test('a bill that is overdue or due within a week is listed with what is left of it, and later ones are summed', () => {
  const { bills, later } = dueBills([folder], SETUP, TODAY);
  expect(bills.map(({ what, more, late, hash }) => [what, more, late, hash])).toEqual([
    [
      'Bluff Haulers, bill no. B-7',
      '$300 of $400, was due Nov 10, 2026, 20 days past due',
      true,
      '#/books/payables/bluff%20haulers',
    ],
    ['Bluff Haulers, bill no. B-8', '$400, due Dec 5, 2026', false, '#/books/payables/bluff%20haulers'],
  ]);
  expect(later).toEqual({ bills: 1, cents: 40_000 });
});

test('it is found by its vendor and by its number, in any case, and the vendor by the number of a check', () => {
  const { bills } = dueBills([folder], SETUP, TODAY);
  expect(billsWith(bills, 'BLUFF b-8').map(({ what }) => what)).toEqual(['Bluff Haulers, bill no. B-8']);
  expect(billsWith(bills, 'other')).toEqual([]);
  expect([...paymentsBy([folder])]).toEqual([['bluff haulers', ['1002']]]);
});
