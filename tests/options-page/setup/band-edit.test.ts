import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandAfter, fallAt } from '../../../options-page/setup/fees/band-edit.ts';
import { type FeeBand, feeBandSchema, feeTableSchema } from '../../../src/domain/fees/fee-schedule.ts';
import { feeOf } from '../../../src/domain/fees/fees-at.ts';

const band = (fromDollars: number, fee: object = { flatCents: 10_000 }): FeeBand =>
  feeBandSchema.parse({ fromCents: Math.round(fromDollars * 100), ...fee });
const fromDollars = (bands: readonly FeeBand[], index: number) => bandAfter(bands, index).fromCents / 100;

describe('a band that is added', () => {
  test('starts half-way to the next, in whole dollars', () => {
    expect(fromDollars([band(0), band(1000)], 0)).toBe(500);
    expect(fromDollars([band(0), band(1001)], 0)).toBe(501);
  });

  test('starts behind the last by the width of the last', () => {
    expect(fromDollars([band(0)], 0)).toBe(500);
    expect(fromDollars([band(0), band(1000)], 1)).toBe(2000);
    expect(fromDollars([band(0), band(1000), band(5000)], 2)).toBe(9000);
  });

  test('fits between bands with no whole dollar between them', () => {
    expect(fromDollars([band(0), band(0.5)], 0)).toBe(0.25);
    expect(fromDollars([band(0), band(1.1), band(1.4)], 1)).toBe(1.25);
  });

  test('leaves the table sound and every fee as it was', () => {
    const starts = fc.uniqueArray(fc.integer({ min: 2, max: 3_000_000 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(starts, fc.nat(), fc.nat(3_500_000), (list, where, price) => {
        const bands = [0, ...list.toSorted((a, b) => a - b)].map((start, i) => band(start / 100, { flatCents: i }));
        const index = where % bands.length;
        const added = bandAfter(bands, index);
        // Two bands one cent apart leave no room; the screen then says which row to move.
        fc.pre(
          bands[index + 1] === undefined || (bands[index + 1]?.fromCents ?? 0) - (bands[index]?.fromCents ?? 0) > 1,
        );
        const table = (rows: readonly FeeBand[]) => feeTableSchema.parse({ label: 'Fee', bands: rows });
        const next = table(bands.toSpliced(index + 1, 0, added));
        expect(feeOf(next, price)).toBe(feeOf(table(bands), price));
      }),
    );
  });
});

describe('a fee that falls at a band', () => {
  const bands = [band(0, { flatCents: 20_000 }), band(5000, { ratePpm: 80_000 }), band(10_000, { flatCents: 45_000 })];

  test('is told with both fees', () => {
    expect(fallAt(bands, 2, 'half-up')).toEqual({ at: 1_000_000, from: 80_000, to: 45_000 });
  });

  test('is not told where the fee rises or the first band starts', () => {
    expect(fallAt(bands, 1, 'half-up')).toBeUndefined();
    expect(fallAt(bands, 0, 'half-up')).toBeUndefined();
  });

  test('is not told of bands that are out of order, which is a fault of its own', () => {
    expect(fallAt([band(0), band(5000), band(4000, { flatCents: 0 })], 2, 'half-up')).toBeUndefined();
  });
});
