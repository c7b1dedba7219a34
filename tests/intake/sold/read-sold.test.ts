import { describe, expect, test } from 'vitest';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { matchSold } from '../../../src/domain/books/sold/match-sold.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { openTable } from '../../../src/intake/open-table.ts';
import { readSold } from '../../../src/intake/sold/read-sold.ts';
import { value } from '../../store/open-test-store.ts';

const TODAY = '2026-11-30' as LocalDate;
const VINS = ['1LX3H4C21M0104471', '5WK3H4C21M0104472', '4HJ3H4C21M0104473'];
const read = (text: string) => value(readSold(value(openTable(text)), TODAY));

describe('a list of sold cars', () => {
  test('is read by its headings, in whatever order and however the amounts and days are written', () => {
    const { rows, faults } = read(
      `Stock,Sale Price,VIN,Date Sold,Sold to\nA1,"$31,900.00",${VINS[0]},11/28/2026,Customer\nA2,15450,${VINS[1]},2026-11-03,Auction\nA3,"18,200",${VINS[2]},"Nov 7, 2026",A fleet business\n`,
    );
    expect(faults).toEqual([]);
    expect(rows).toEqual([
      { row: 2, vin: VINS[0], date: '2026-11-28', price: 3_190_000, buyer: 'retail' },
      { row: 3, vin: VINS[1], date: '2026-11-03', price: 1_545_000, buyer: 'wholesale' },
      { row: 4, vin: VINS[2], date: '2026-11-07', price: 1_820_000, buyer: 'business' },
    ]);
  });

  test('loses no row: each that can’t be read says what to do, and the others are read', () => {
    const { rows, faults } = read(
      `VIN,Sold date,Price\n${VINS[0]},2026-11-28,$31900\n,2026-11-28,$100\n${VINS[1]},,15450\n${VINS[1]},2026-12-24,15450\n${VINS[1]},2026-11-02,0\n${VINS[1]},2026-11-02,soon\n${VINS[2]},2026-11-02,18200\n`,
    );
    expect(rows.map(({ row }) => row)).toEqual([2, 8]);
    expect(faults.map(({ row }) => row)).toEqual([3, 4, 5, 6, 7]);
    for (const { message } of faults) expect(message.length).toBeGreaterThan(20);
  });

  test('without a heading for what is needed says which one is missing', () => {
    expect(readSold(value(openTable('VIN,Amount\nx,100\n')), TODAY)).toMatchObject({
      ok: false,
      message: expect.stringContaining('the sale date'),
    });
  });
});

const folder = (n: number, more: Partial<PurchaseFolder> = {}): PurchaseFolder =>
  ({
    lot: `lot-${n}` as LotId,
    facts: { vin: VINS[n], make: 'Larkspur' },
    won: { hammer: cents(1_000_000), date: '2026-10-01' as LocalDate },
    stage: 'in-stock',
    ...more,
  }) as PurchaseFolder;

const row = (n: number, vin: string, price = 3_190_000, date = '2026-11-28') => ({
  row: n,
  vin,
  date: date as LocalDate,
  price: cents(price),
  buyer: 'retail' as const,
});

describe('sold cars and their folders', () => {
  const outcome = {
    lot: 'lot-1' as LotId,
    date: '2026-11-28' as LocalDate,
    priceCents: cents(3_190_000),
    buyer: 'retail' as const,
  };
  const folders = [folder(0), folder(1, { stage: 'sold', outcome }), folder(2, { stage: 'undone' })];

  test('every row comes back, with what becomes of it', () => {
    const matched = matchSold(
      [
        row(2, VINS[0] ?? ''),
        row(3, VINS[1] ?? ''),
        row(4, VINS[1] ?? '', 3_000_000),
        row(5, VINS[2] ?? ''),
        row(6, '7TR3H4C21M0104479'),
        row(7, `${VINS[0]?.slice(0, 16)}9`),
      ],
      folders,
    );
    expect(matched.map(({ row: n, state }) => [n, state])).toEqual([
      [2, 'look'],
      [3, 'same'],
      [4, 'look'],
      [5, 'none'],
      [6, 'none'],
      [7, 'look'],
    ]);
  });

  test('a car once in the list is ready, or corrects what is recorded', () => {
    expect(matchSold([row(2, VINS[0] ?? '')], folders)[0]).toMatchObject({ state: 'new', folder: { lot: 'lot-0' } });
    const [other] = matchSold([row(2, VINS[1] ?? '', 3_000_000)], folders);
    expect(other).toMatchObject({
      state: 'differs',
      why: 'Recorded as $31,900 on 2026-11-28. Tick it to correct that.',
    });
  });

  test('a sale before its win is to be looked at', () => {
    expect(matchSold([row(2, VINS[0] ?? '', 3_190_000, '2026-09-01')], folders)[0]).toMatchObject({ state: 'look' });
  });
});
