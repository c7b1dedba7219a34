import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { STARTING_BOOKKEEPING } from '../../../src/domain/accounts/accounts.ts';
import type { Month } from '../../../src/domain/books/month.ts';
import { type AccruedCar, accrualMonths, accrualOf } from '../../../src/domain/books/post/accrual.ts';
import { type CarBookings, lotTransactions } from '../../../src/domain/books/post/lot-transactions.ts';
import {
  balances,
  type ClosedMonth,
  inMonth,
  postMonths,
  toClose,
} from '../../../src/domain/books/post/post-months.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { addDays } from '../../../src/domain/time/calendar-day.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { lotNumber, randomCar } from './random-car.ts';

const { treatment } = STARTING_BOOKKEEPING;
const day = (text: string) => text as LocalDate;
const month = (text: string) => text as Month;
const dollars = (amount: number) => cents(Math.round(amount * 100));

type WonCar = CarBookings & AccruedCar;
const WON: WonCar = {
  lot: lotNumber(1),
  name: 'Lot 218',
  venue: 'Saguaro Sale Yard',
  won: { hammer: dollars(12_350), date: day('2026-12-28') },
  expected: {
    lines: [
      { cost: 'hammer', cents: dollars(12_350) },
      { cost: 'fee', cents: dollars(475) },
    ],
  },
  costs: [],
  payments: [],
  floor: [],
};
const billed = (date: string, hammer = 12_350, fee = 475): Pick<CarBookings, 'costs'> => ({
  costs: [
    { key: 'h', cost: 'hammer', label: 'Hammer', cents: dollars(hammer), date: day(date), paid: 'owed' },
    { key: 'f', cost: 'fee', label: 'Buy fee', cents: dollars(fee), date: day(date), paid: 'owed' },
  ],
});
const made = (cars: readonly WonCar[], closes: readonly ClosedMonth[], through: string) =>
  cars.flatMap((car) =>
    lotTransactions({ ...car, accrual: accrualOf(car, accrualMonths(closes, month(through))) }, treatment),
  );
const posted = (cars: readonly WonCar[], closes: readonly ClosedMonth[], through: string) =>
  postMonths(made(cars, closes, through), closes);
const close = (cars: readonly WonCar[], name: string, before: readonly ClosedMonth[] = []): ClosedMonth => ({
  month: month(name),
  transactions: toClose(posted(cars, before, name), month(name)),
});
const upTo = (cars: readonly WonCar[], closes: readonly ClosedMonth[], through: string, last: string) =>
  Object.fromEntries(balances(posted(cars, closes, through).transactions.filter(({ date }) => date <= last)));

// Source of the entry: accountingcoach.com, "What is the entry when merchandise has been received but not the vendor's
// invoice?": debit Inventory, credit an accrued liability, reversed afterwards. That the bill reverses it: common practice.
describe('a car won on December 28 and billed in January', () => {
  test('is inventory and owed without a bill at the end of December, and a payable of the billed amount afterwards', () => {
    const car = { ...WON, ...billed('2027-01-06', 12_350, 500) };
    expect(upTo([car], [], '2026-12', '2026-12-31')).toEqual({
      inventory: dollars(12_825),
      accrued: dollars(-12_825),
    });
    expect(upTo([car], [], '2026-12', '2027-01-06')).toEqual({
      inventory: dollars(12_850),
      payable: dollars(-12_850),
    });
  });

  test('is accrued once, however many months it waits, and not while its month runs', () => {
    expect(made([WON], [], '2027-03').map(({ date }) => date)).toEqual(['2026-12-31']);
    expect(made([WON], [], '2026-11')).toEqual([]);
  });

  test('does not change December, which was closed without the bill', () => {
    const december = close([WON], '2026-12');
    expect(december.transactions).toMatchObject([{ date: '2026-12-31', payee: 'Saguaro Sale Yard' }]);
    const after = posted([{ ...WON, ...billed('2027-01-06') }], [december], '2026-12');
    expect(inMonth(after, month('2026-12'))).toEqual(december.transactions);
    expect(inMonth(after, month('2027-01')).map(({ text, corrects }) => [text, corrects])).toEqual([
      ['Accrual reversed: billed · Lot 218', undefined],
      ['Buy fee · Lot 218', undefined],
      ['Hammer · Lot 218', undefined],
    ]);
  });

  test('with a bill dated December that came after the close, is corrected in January and comes to the bill', () => {
    const december = close([WON], '2026-12');
    const late = [{ ...WON, ...billed('2026-12-30', 12_350, 500) }];
    expect(inMonth(posted(late, [december], '2026-12'), month('2026-12'))).toEqual(december.transactions);
    expect(upTo(late, [december], '2026-12', '2027-01-31')).toEqual({
      inventory: dollars(12_850),
      payable: dollars(-12_850),
    });
  });

  test('sold before its bill, takes the accrued cost along, and what is billed then is cost of sales', () => {
    const outcome = { date: day('2027-01-03'), priceCents: dollars(15_000), buyer: 'retail' as const };
    const sold = { ...WON, outcome };
    expect(upTo([sold], [], '2026-12', '2027-01-03')).toEqual({
      costOfSales: dollars(12_825),
      accrued: dollars(-12_825),
      bank: dollars(15_000),
      retail: dollars(-15_000),
    });
    expect(upTo([{ ...sold, ...billed('2027-01-20', 12_350, 500) }], [], '2026-12', '2027-01-31')).toMatchObject({
      costOfSales: dollars(12_850),
      payable: dollars(-12_850),
    });
  });

  test('canceled before its bill, is taken back on that day', () => {
    const canceled = { ...WON, undoneOn: day('2027-01-04') };
    const entries = made([canceled], [], '2026-12');
    expect(entries.map(({ date, text }) => [date, text])).toContainEqual([
      '2027-01-04',
      'Accrual reversed: canceled · Lot 218',
    ]);
    expect([...balances(entries)]).toEqual([]);
  });
});

test('of a month that was closed before there were accruals nothing is corrected; the car is accrued at the next end', () => {
  const december: ClosedMonth = { month: month('2026-12'), transactions: [] };
  expect(posted([WON], [december], '2026-12').transactions).toEqual([]);
  expect(posted([WON], [december], '2027-01').transactions).toMatchObject([{ date: '2027-01-31' }]);
  const early = { ...WON, ...billed('2027-01-06') };
  expect(posted([early], [december], '2027-01').transactions).toHaveLength(2);
});

test('in a closed month it stays as it was made, though more would be expected now, and its bill reverses all of it', () => {
  const december = close([WON], '2026-12');
  const dearer = { ...WON, expected: { lines: [{ cost: 'fee', cents: dollars(900) }] } };
  expect(posted([dearer], [december], '2026-12').transactions).toEqual(december.transactions);
  expect(upTo([{ ...dearer, ...billed('2027-01-06') }], [december], '2026-12', '2027-01-06')).toEqual({
    inventory: dollars(12_825),
    payable: dollars(-12_825),
  });
});

test('a bill for its fees, dated December and recorded after the close, reverses their part in January', () => {
  const december = close([WON], '2026-12');
  const fees = { ...WON, costs: billed('2026-12-29').costs.slice(1) };
  expect(upTo([fees], [december], '2026-12', '2027-01-01')).toEqual({
    inventory: dollars(12_825),
    accrued: dollars(-12_350),
    payable: dollars(-475),
  });
});

test('fees that were billed before the price take back their own part', () => {
  const [hammer, fee] = billed('2027-01-06').costs;
  if (hammer === undefined || fee === undefined) throw new Error('no bill');
  const car = { ...WON, costs: [{ ...fee, date: day('2027-01-02') }, hammer] };
  expect(upTo([car], [], '2026-12', '2027-01-02')).toEqual({
    inventory: dollars(12_825),
    accrued: dollars(-12_350),
    payable: dollars(-475),
  });
});

const wonCar = (n: number): fc.Arbitrary<WonCar> =>
  fc
    .record({
      car: randomCar(n),
      hammer: fc.integer({ min: 1, max: 4_000_000 }),
      fees: fc.integer({ min: 0, max: 90_000 }),
      days: fc.nat({ max: 130 }),
      lost: fc.boolean(),
    })
    .map(({ car, hammer, fees, days, lost }) => ({
      ...car,
      won: lost && n === 0 ? null : { hammer: cents(hammer), date: addDays(day('2026-08-20'), days) },
      expected: { lines: [{ cost: 'fee', cents: cents(fees) }] },
    }));
const wonCars = fc.tuple(wonCar(0), wonCar(1), wonCar(2));
const sorted = (sums: ReadonlyMap<string, number>) => [...sums].sort(([a], [b]) => (a < b ? -1 : 1));

describe('whatever is won, billed, sold, canceled and changed', () => {
  test('accrual, what takes it back and the bill add up to the bill', () => {
    fc.assert(
      fc.property(wonCar(1), (car) => {
        fc.pre(car.costs.some(({ cost, cents: amount }) => cost === 'hammer' && amount > 0));
        const without = lotTransactions(car, treatment);
        expect(sorted(balances(made([car], [], '2027-06')))).toEqual(sorted(balances(without)));
      }),
    );
  });

  test('what is accrued and not taken back is what is won and not billed', () => {
    fc.assert(
      fc.property(wonCar(1), (car) => {
        const isBilled = (kind: string) => car.costs.some(({ cost, cents: amount }) => cost === kind && amount > 0);
        const stands = car.won !== null && car.undoneOn === undefined && !isBilled('hammer');
        const open = stands ? (car.won?.hammer ?? 0) + (isBilled('fee') ? 0 : (car.expected?.lines[0]?.cents ?? 0)) : 0;
        expect(-(balances(made([car], [], '2027-06')).get('accrued') ?? 0) + 0).toBe(open);
      }),
    );
  });

  test('closed months never change, and all months come to what the bookings come to', () => {
    fc.assert(
      fc.property(wonCars, wonCars, wonCars, (first, second, third) => {
        const september = close(first, '2026-09');
        const october = close(second, '2026-10', [september]);
        const closes = [september, october];
        const now = posted(third, closes, '2026-12');
        for (const name of ['2026-08', '2026-09'])
          expect(inMonth(now, month(name))).toEqual(september.transactions.filter(({ date }) => date.startsWith(name)));
        expect(inMonth(now, month('2026-10'))).toEqual(october.transactions);
        expect(sorted(balances(now.transactions))).toEqual(sorted(balances(made(third, closes, '2026-12'))));
      }),
    );
  });

  test('nothing is in inventory from the day on which the car is sold or the purchase is canceled', () => {
    fc.assert(
      fc.property(wonCar(1), (car) => {
        const gone = car.undoneOn ?? car.outcome?.date;
        fc.pre(gone !== undefined);
        const entries = made([car], [], '2027-06');
        const days = [gone ?? '', ...entries.map(({ date }) => date)].filter((date) => date >= (gone ?? ''));
        for (const last of new Set(days))
          expect(balances(entries.filter(({ date }) => date <= last)).get('inventory')).toBeUndefined();
      }),
    );
  });
});
