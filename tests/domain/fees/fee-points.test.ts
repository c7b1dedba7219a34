import { expect, test } from 'vitest';
import { feePoints } from '../../../src/domain/fees/fee-points.ts';
import { type FeeTable, feeTableSchema } from '../../../src/domain/fees/fee-schedule.ts';
import { totalFees } from '../../../src/domain/fees/fees-at.ts';
import { cents } from '../../../src/domain/money/cents.ts';

const tables: FeeTable[] = [
  feeTableSchema.parse({
    label: 'Buy fee',
    bands: [
      { fromCents: 0, flatCents: 10_000 },
      { fromCents: 100_000, ratePpm: 100_000, minimumCents: 20_000, maximumCents: 40_000 },
      { fromCents: 1_000_000, flatCents: 30_000 },
    ],
  }),
  feeTableSchema.parse({ label: 'Online fee', bands: [{ fromCents: 0, ratePpm: 10_000 }] }),
];

test('the picture of a fee has both sides of every edge and the corners where a limit takes hold', () => {
  const prices = feePoints(tables, cents(2_000_000)).map((point) => point.price);
  expect(prices).toEqual([0, 99_999, 100_000, 200_000, 400_000, 999_999, 1_000_000, 2_000_000]);
});

test('between two points the fee is a straight line, to the cent', () => {
  const points = feePoints(tables, cents(2_000_000));
  for (const [i, right] of points.entries()) {
    const left = points[i - 1];
    if (left === undefined || right.price - left.price === 1) continue;
    for (let part = 1; part < 10; part++) {
      const price = Math.round(left.price + ((right.price - left.price) * part) / 10);
      const onLine = left.fee + ((right.fee - left.fee) * (price - left.price)) / (right.price - left.price);
      expect(Math.abs(totalFees(price, tables) - onLine)).toBeLessThanOrEqual(2);
    }
  }
});
