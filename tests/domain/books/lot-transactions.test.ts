import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { STARTING_BOOKKEEPING } from '../../../src/domain/accounts/accounts.ts';
import { type CarBookings, lotTransactions } from '../../../src/domain/books/post/lot-transactions.ts';
import { balances } from '../../../src/domain/books/post/post-months.ts';
import { cents, sumCents, ZERO } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { lotNumber, randomCar } from './random-car.ts';

const { treatment } = STARTING_BOOKKEEPING;
const day = (text: string) => text as LocalDate;
const dollars = (amount: number) => cents(Math.round(amount * 100));

const CAR: CarBookings = {
  lot: lotNumber(1),
  name: 'Lot 218',
  costs: [
    { key: 'a', cost: 'hammer', label: 'Hammer', cents: dollars(12_350), date: day('2026-03-09'), paid: 'owed' },
    { key: 'b', cost: 'fee', label: 'Buy fee', cents: dollars(475), date: day('2026-03-09'), paid: 'owed' },
    { key: 'c', cost: 'transport', label: 'Freight', cents: dollars(380), date: day('2026-03-12'), paid: 'bank' },
    { key: 'd', cost: 'recon', label: 'Recon', cents: dollars(912.45), date: day('2026-03-15'), paid: 'bank' },
    { key: 'e', cost: 'interest', label: 'Interest', cents: dollars(93.52), date: day('2026-04-08'), paid: 'bank' },
  ],
  payments: [],
  floor: [
    { key: 'f', move: 'draw', cents: dollars(12_825), date: day('2026-03-09') },
    { key: 'g', move: 'payoff', cents: dollars(12_825), date: day('2026-04-20') },
  ],
};

describe('one car that was bought, held and sold', () => {
  test('leaves the balances of a worked example that three journal programs agreed on', () => {
    const outcome = { date: day('2026-04-20'), priceCents: dollars(16_995), buyer: 'retail' as const };
    const after = balances(lotTransactions({ ...CAR, outcome }, treatment));
    expect(Object.fromEntries(after)).toEqual({
      bank: dollars(2784.03),
      interest: dollars(93.52),
      costOfSales: dollars(14_117.45),
      retail: dollars(-16_995),
    });
  });

  test('puts a bill that comes after the sale straight into cost of sales', () => {
    const late = {
      key: 'z',
      cost: 'recon',
      label: 'Late',
      cents: dollars(50),
      date: day('2026-05-01'),
      paid: 'bank',
    } as const;
    const outcome = { date: day('2026-04-20'), priceCents: dollars(16_995), buyer: 'wholesale' as const };
    const after = balances(lotTransactions({ ...CAR, costs: [...CAR.costs, late], outcome }, treatment));
    expect(after.get('inventory')).toBeUndefined();
    expect(after.get('costOfSales')).toBe(dollars(14_167.45));
    expect(after.get('wholesale')).toBe(dollars(-16_995));
  });

  test('undone and paid back, leaves nothing but what nobody gave back', () => {
    const bought = { ...CAR, undoneOn: day('2026-03-20') };
    const after = balances(lotTransactions(bought, treatment));
    expect(after.get('inventory')).toBeUndefined();
    // The sale still owes what the lender had paid it.
    expect(after.get('payable')).toBe(dollars(12_825));
    expect(after.get('undone')).toBe(dollars(380 + 912.45));
    const refund = { key: 'r', cents: dollars(-12_825), date: day('2026-03-25') };
    const settled = balances(lotTransactions({ ...bought, payments: [refund] }, treatment));
    expect(Object.fromEntries(settled)).toEqual({
      undone: dollars(1292.45),
      interest: dollars(93.52),
      bank: dollars(-1292.45 - 93.52),
    });
  });
});

test('of an undone purchase, a fee that was paid at once is lost, and one that was owed is not', () => {
  const fee = { key: 'x', cost: 'fee', label: 'Gate pass', cents: dollars(45), date: day('2026-03-09') } as const;
  const after = (paid: 'owed' | 'bank') =>
    balances(lotTransactions({ ...CAR, costs: [{ ...fee, paid }], floor: [], undoneOn: day('2026-03-20') }, treatment));
  expect(Object.fromEntries(after('bank'))).toEqual({ undone: dollars(45), bank: dollars(-45) });
  expect(Object.fromEntries(after('owed'))).toEqual({});
});

test('sales tax that was paid is part of the car’s cost, or, as the dealer says, stands apart until it comes back', () => {
  const tax = {
    key: 't',
    cost: 'sales-tax',
    label: 'Sales tax',
    cents: dollars(780),
    date: day('2026-03-09'),
  } as const;
  const back = { ...tax, key: 'u', cents: dollars(-780), date: day('2026-06-01'), paid: 'bank' } as const;
  const car = { ...CAR, costs: [{ ...tax, paid: 'bank' as const }], floor: [] };
  expect(Object.fromEntries(balances(lotTransactions(car, treatment)))).toEqual({
    inventory: dollars(780),
    bank: dollars(-780),
  });
  const refundable = { ...treatment, 'sales-tax': 'expense' as const };
  expect(Object.fromEntries(balances(lotTransactions(car, refundable)))).toEqual({
    'sales-tax': dollars(780),
    bank: dollars(-780),
  });
  expect([...balances(lotTransactions({ ...car, costs: [...car.costs, back] }, refundable))]).toEqual([]);
});

describe('any life of a car', () => {
  test('balances, transaction by transaction and account by account', () => {
    fc.assert(
      fc.property(randomCar(1), (car) => {
        const made = lotTransactions(car, treatment);
        for (const { postings } of made) expect(sumCents(postings.map((posting) => posting.cents))).toBe(0);
        expect(sumCents(balances(made).values())).toBe(0);
        expect(new Set(made.map(({ key }) => key)).size).toBe(made.length);
      }),
    );
  });

  test('owes exactly what was billed and not paid, and has on the floor plan what was drawn and not paid off', () => {
    fc.assert(
      fc.property(randomCar(1), (car) => {
        const after = balances(lotTransactions({ ...car, undoneOn: undefined }, treatment));
        const sum = (amounts: readonly number[]) => amounts.reduce((total, one) => total + one, 0);
        const billed = sum(car.costs.filter(({ paid }) => paid === 'owed').map((cost) => cost.cents));
        const drawn = sum(car.floor.filter(({ move }) => move === 'draw').map((move) => move.cents));
        const paidOff = sum(car.floor.filter(({ move }) => move === 'payoff').map((move) => move.cents));
        const paid = sum(car.payments.map((payment) => payment.cents));
        expect(after.get('payable') ?? ZERO).toBe(cents(paid + drawn - billed));
        expect(after.get('floor') ?? ZERO).toBe(cents(paidOff - drawn));
      }),
    );
  });

  test('has nothing in inventory from the day on which the car is sold or the purchase is undone', () => {
    fc.assert(
      fc.property(randomCar(1), (car) => {
        const gone = car.undoneOn ?? car.outcome?.date;
        fc.pre(gone !== undefined);
        const made = lotTransactions(car, treatment);
        const days = [gone ?? '', ...made.map(({ date }) => date)].filter((date) => date >= (gone ?? ''));
        for (const last of new Set(days))
          expect(balances(made.filter(({ date }) => date <= last)).get('inventory')).toBeUndefined();
      }),
    );
  });

  test('reversed and refunded, is as if the purchase had never been', () => {
    fc.assert(
      fc.property(randomCar(1), (car) => {
        // Only what the sale billed: that is what a reversed sale gives back.
        const costs = car.costs
          .filter(({ cost }) => cost === 'hammer' || cost === 'fee')
          .map((cost) => ({ ...cost, paid: 'owed' as const, date: day('2026-09-01') }));
        const floor = car.floor.flatMap((move) => [
          { ...move, move: 'draw' as const },
          { ...move, key: `${move.key}-back`, move: 'payoff' as const },
        ]);
        const paid = [...car.payments.map((payment) => payment.cents), ...car.floor.map((move) => move.cents)];
        const refund = {
          key: 'refund',
          cents: cents(-paid.reduce((total, one) => total + one, 0)),
          date: day('2026-12-01'),
        };
        const payments = [...car.payments, refund];
        const undone = { ...car, costs, floor, payments, outcome: undefined, undoneOn: day('2026-11-01') };
        expect([...balances(lotTransactions(undone, treatment))]).toEqual([]);
      }),
    );
  });
});
