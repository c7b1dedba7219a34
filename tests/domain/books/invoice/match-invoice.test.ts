import { describe, expect, test } from 'vitest';
import { expectedPurchase } from '../../../../src/domain/books/folder/expected.ts';
import type { InvoiceLine } from '../../../../src/domain/books/invoice/invoice-line.ts';
import type { BookedCar } from '../../../../src/domain/books/invoice/judge-line.ts';
import { linkedWordings } from '../../../../src/domain/books/invoice/linked-wordings.ts';
import type { FolderCar } from '../../../../src/domain/books/invoice/match-car.ts';
import { matchInvoice, startsTicked } from '../../../../src/domain/books/invoice/match-invoice.ts';
import { CONTEXT, day, dollars, FACTS } from '../folder-test-car.ts';
import { lotNumber } from '../random-car.ts';

type Folder = FolderCar & BookedCar;
const folder = (n: number, set: Partial<Folder> = {}): Folder => ({
  lot: lotNumber(n),
  vin: '1M8GDM9AXKP042788',
  lotNumber: '218',
  venueId: 'saguaro',
  won: day('2026-11-28'),
  hammer: dollars(9725),
  expected: expectedPurchase(FACTS, CONTEXT, dollars(9725)).lines,
  costs: [],
  payments: [],
  owed: dollars(0),
  ...set,
});
const line = (set: Partial<InvoiceLine> = {}): InvoiceLine => ({
  id: set.id ?? `${set.row ?? 2}.1`,
  row: 2,
  what: 'cost',
  cost: 'fee',
  label: 'Buy fee',
  cents: dollars(450),
  vin: '1M8GDM9AXKP042788',
  date: day('2026-11-30'),
  ...set,
});
const first = (lines: readonly InvoiceLine[], folders: readonly Folder[]) => {
  const [car] = matchInvoice(lines, folders, 'saguaro');
  if (car === undefined) throw new Error('no car came of the lines');
  return car;
};

describe('which folder a row belongs to', () => {
  const other = folder(2, { vin: '1LX3H4C21M0104471', lotNumber: '310', hammer: dollars(12_000) });
  const both = [folder(1), other];

  test.each([
    ['the VIN, however it is spaced', { vin: '1m8g dm9a xkp0-42788' }, 'exact', 1],
    ['the lot number, at this venue and in time', { vin: undefined, lotNumber: 'Lot 0218' }, 'exact', 1],
    [
      'the lot number with another hammer price',
      { vin: undefined, lotNumber: '218', cost: 'hammer', cents: dollars(9000) },
      'near',
      1,
    ],
    ['a lot number of half a year ago', { vin: undefined, lotNumber: '218', date: day('2026-05-01') }, 'near', 1],
    ['the VIN with another lot number', { lotNumber: '310' }, 'near', 1],
    ['a VIN with one slip', { vin: '1M8GDM9AXKP042789' }, 'near', 1],
    ['the last eight of the VIN', { vin: 'KP042788' }, 'near', 1],
    ['another car’s VIN with a lot number that fits', { vin: '5WKAAAAA0L1234567', lotNumber: '310' }, 'near', 2],
    ['the amount and the day alone', { vin: undefined, cost: 'hammer', cents: dollars(12_000) }, 'near', 2],
    ['another car’s VIN', { vin: '5WKAAAAA0L1234567' }, 'none', null],
    ['nothing at all', { vin: undefined }, 'none', null],
  ] as const)('by %s', (_, set, how, n) => {
    const { match } = first([line(set as Partial<InvoiceLine>)], both);
    expect(match).toMatchObject({ how, lot: n === null ? null : lotNumber(n) });
    expect(match.why).toMatch(/\.$/);
  });

  test('is never certain when the car was won twice, and the nearest in time is offered', () => {
    const again = folder(3, { won: day('2026-03-01') });
    expect(first([line()], [again, folder(1)]).match).toMatchObject({ how: 'near', lot: lotNumber(1) });
  });

  test('is what the user says, for all rows of the car', () => {
    const lines = [
      line({ vin: undefined, lotNumber: '999' }),
      line({ vin: undefined, lotNumber: '999', row: 3, label: 'Gate pass', cents: dollars(45) }),
    ];
    const [before] = matchInvoice(lines, both, 'saguaro');
    const [after] = matchInvoice(lines, both, 'saguaro', new Map([[before?.id ?? '', lotNumber(1)]]));
    expect(after?.match).toMatchObject({ how: 'near', lot: lotNumber(1) });
    expect(after?.lines.map(({ verdict }) => verdict)).toEqual(['as-expected', 'as-expected']);
  });
});

describe('what to think of a line', () => {
  const verdicts = (lines: readonly InvoiceLine[], set: Partial<Folder> = {}) =>
    first(lines, [folder(1, set)]).lines.map(({ verdict }) => verdict);

  test('a fee that differs is pointed at with the line of the price list, and is not ticked', () => {
    const car = first([line({ cents: dollars(475) })], [folder(1)]);
    const [judged] = car.lines;
    expect(judged).toMatchObject({
      verdict: 'differs',
      why: '$25 more than the fee schedule: “Saguaro buyer fees”, from $8,000: $450.',
    });
    expect(judged && startsTicked(car.match, judged)).toBe(false);
  });

  test('what is as expected is ticked, but only where the car is certain', () => {
    const certain = first([line()], [folder(1)]);
    const near = first([line({ vin: 'KP042788' })], [folder(1)]);
    const ticked = (car: typeof certain) => car.lines.map((judged) => startsTicked(car.match, judged));
    expect([ticked(certain), ticked(near)]).toEqual([[true], [false]]);
  });

  test('a line that is booked, is recorded with another amount, or stands twice in the file is told as such', () => {
    const booked = {
      label: 'Buyer fee',
      cost: 'fee' as const,
      cents: dollars(450),
      date: day('2026-11-29'),
      against: 'fee-0',
    };
    expect(verdicts([line()], { costs: [booked] })).toEqual(['booked']);
    expect(verdicts([line({ cents: dollars(475) })], { costs: [booked] })).toEqual(['again']);
    expect(verdicts([line(), line({ row: 9, id: '9.1' })])).toEqual(['as-expected', 'twice']);
  });

  test('a name of the price list makes a fee of what the file calls something else', () => {
    expect(verdicts([line({ cost: 'other', label: 'Gate pass', cents: dollars(45) })])).toEqual(['as-expected']);
    expect(verdicts([line({ cost: 'other', label: 'Key cutting', cents: dollars(30) })])).toEqual(['not-expected']);
  });

  test('payments count against what is owed and what the same file bills: a part, the rest, too much, the same again', () => {
    const pay = (amount: number, row: number, date = '2026-12-02'): InvoiceLine =>
      line({
        what: 'payment',
        cost: 'other',
        label: 'Payment',
        cents: dollars(amount),
        row,
        id: `${row}.1`,
        date: day(date),
      });
    const bill = [line({ cost: 'hammer', label: 'Vehicle', cents: dollars(9725) }), line({ row: 3, id: '3.1' })];
    expect(verdicts([...bill, pay(5000, 4), pay(5175, 5, '2026-12-03'), pay(100, 6)])).toEqual([
      'as-expected',
      'as-expected',
      'part-payment',
      'payment',
      'overpaid',
    ]);
    const paid = { payments: [{ cents: dollars(5000), date: day('2026-12-02') }], owed: dollars(5175) };
    expect(verdicts([pay(5000, 4)], paid)).toEqual(['booked']);
    expect(verdicts([pay(-100, 4)], paid)).toEqual(['came-back']);
    // One that somebody tapped some days before the statement's day is the same, one that was booked is not.
    const tapped = { payments: [{ cents: dollars(5000), date: day('2026-11-27'), noted: true }], owed: dollars(5175) };
    expect(verdicts([pay(5000, 4)], tapped)).toEqual(['booked']);
    expect(
      verdicts([pay(5000, 4)], { ...tapped, payments: tapped.payments.map((one) => ({ ...one, noted: false })) }),
    ).toEqual(['part-payment']);
    expect(verdicts([pay(4900, 4)], tapped)).toEqual(['part-payment']);
  });

  test('one car that the file writes in two ways is held against the books once', () => {
    const lines = [line(), line({ vin: undefined, lotNumber: '218', row: 8, id: '8.1' })];
    const cars = matchInvoice(lines, [folder(1)], 'saguaro');
    expect(cars.flatMap((car) => car.lines.map(({ verdict }) => verdict))).toEqual(['as-expected', 'twice']);
  });
});

describe('a fee that the venue words otherwise', () => {
  const words = (row: number, set: Partial<InvoiceLine> = {}) =>
    line({ id: `${row}.1`, row, cost: 'other', label: 'Premium to buyer', ...set });
  const recorded = {
    label: 'Premium to buyer',
    cost: 'fee' as const,
    cents: dollars(450),
    date: day('2026-11-01'),
    against: 'fee-0',
  };
  const before = folder(7, { vin: '1LX3H4C21M0104471', lotNumber: '310', costs: [recorded] });
  const judge = (lines: readonly InvoiceLine[], folders: readonly Folder[]) =>
    matchInvoice(lines, folders, 'saguaro', new Map(), linkedWordings(folders, 'saguaro'))[0]?.lines ?? [];

  test('is asked about, with the fee of the same amount, and not checked', () => {
    const [judged] = judge([words(2)], [folder(1)]);
    expect(judged).toMatchObject({ verdict: 'not-expected', why: expect.stringMatching(/amount is that of .*Buy/) });
  });

  test('is known once it was recorded against the fee, and no second line is taken for it', () => {
    const judged = judge([words(2), words(3, { label: 'Buy fee' }), words(4)], [folder(1), before]);
    expect(judged.map(({ verdict, expected }) => [verdict, expected?.key])).toEqual([
      ['as-expected', 'fee-0'],
      ['again', 'fee-0'],
      ['twice', undefined],
    ]);
  });

  test('is not known at another venue, nor when it was recorded against two different fees', () => {
    expect(linkedWordings([before], 'saltgrass').size).toBe(0);
    const other = folder(8, { costs: [{ ...recorded, against: 'fee-1' }] });
    expect(linkedWordings([before], 'saguaro').get('premium to buyer')).toBe('buy fee');
    expect(linkedWordings([before, other], 'saguaro').size).toBe(0);
  });

  test('stays what it was for money and for credits', () => {
    const paid = words(2, { what: 'payment', cents: dollars(450) });
    const credit = words(3, { cents: dollars(-450), raises: dollars(-450) });
    const judged = judge([paid, credit], [folder(1, { owed: dollars(900) }), before]);
    expect(judged.map(({ line: { what, against } }) => [what, against])).toEqual([
      ['payment', undefined],
      ['cost', undefined],
    ]);
  });
});
