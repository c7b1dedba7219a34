import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { feeTableSchema } from '../../../src/domain/fees/fee-schedule.ts';
import { feeOf, feesAt, totalFees } from '../../../src/domain/fees/fees-at.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { feeTable } from '../deal/random-deal.ts';

const table = (...bands: object[]) => feeTableSchema.parse({ label: 'Buy fee', bands });

describe('a fee table', () => {
  test('charges a price on an edge by the upper band', () => {
    const stepped = table({ fromCents: 0, flatCents: 100 }, { fromCents: 1000, flatCents: 200 });
    expect([0, 999, 1000, 1001, 99_999_999].map((price) => feeOf(stepped, price))).toEqual([100, 100, 200, 200, 200]);
  });

  test('adds the flat part and the percentage before it is held between minimum and maximum', () => {
    const band = table({ fromCents: 0, flatCents: 1000, ratePpm: 50_000, minimumCents: 1500, maximumCents: 4000 });
    expect([0, 10_000, 20_000, 60_000, 80_000].map((price) => feeOf(band, price))).toEqual([
      1500, 1500, 2000, 4000, 4000,
    ]);
  });

  test.each([
    ['half-up', 13, 38],
    ['half-even', 12, 38],
    ['up', 13, 38],
    ['down', 12, 37],
  ] as const)('rounds the percentage %s', (rounding, ofQuarter, ofThreeQuarters) => {
    const five = feeTableSchema.parse({ label: 'x', rounding, bands: [{ fromCents: 0, ratePpm: 50_000 }] });
    // 5% of $2.50 is 12.5 cents, of $7.50 it is 37.5.
    expect([feeOf(five, 250), feeOf(five, 750)]).toEqual([ofQuarter, ofThreeQuarters]);
  });

  test('never charges less for a higher price within a band', () => {
    fc.assert(
      fc.property(feeTable, fc.nat({ max: 1_000_000 }), fc.nat({ max: 5000 }), (any, price, more) => {
        const edge = any.bands.find((band) => band.fromCents > price)?.fromCents ?? Number.POSITIVE_INFINITY;
        const higher = Math.min(price + more, edge - 1);
        expect(feeOf(any, higher)).toBeGreaterThanOrEqual(feeOf(any, price));
      }),
    );
  });

  test('gives one line, and the lines add up to the total', () => {
    fc.assert(
      fc.property(fc.array(feeTable, { maxLength: 4 }), fc.nat({ max: 1_000_000 }), (tables, price) => {
        const lines = feesAt(cents(price), tables);
        expect(lines.map((line) => line.label)).toEqual(tables.map((one) => one.label));
        expect(lines.reduce((sum, line) => sum + line.cents, 0)).toBe(totalFees(price, tables));
      }),
    );
  });
});
