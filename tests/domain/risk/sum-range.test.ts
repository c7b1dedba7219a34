import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { UncertainCost } from '../../../src/domain/risk/cost-grid.ts';
import { sumRange } from '../../../src/domain/risk/sum-range.ts';

const sure = (amount: number, chance = 1): UncertainCost => ({ low: amount, likely: amount, high: amount, chance });

test('of costs that come or do not, it is what the binomial distribution says', () => {
  // Ten costs of $100, each as likely as not. Binomial(10, ½): P(X ≤ 2) = 56/1024, P(X ≤ 3) = 176/1024, P(X ≤ 6) = 848/1024,
  // P(X ≤ 7) = 968/1024 (computed from the binomial coefficients), so the tenths lie at 3 and 7.
  expect(sumRange(Array.from({ length: 10 }, () => sure(100_00, 0.5)))).toEqual({ low: 300_00, high: 700_00 });
  expect(sumRange([sure(250_00), sure(400_00, 0.05)])).toEqual({ low: 250_00, high: 250_00 });
  expect(sumRange([])).toEqual({ low: 0, high: 0 });
});

test('of an even spread it is its tenths', () => {
  // PERT with the likely figure in the middle of 0 and 6000 is 6000 × Beta(3, 3); its tenth is at 0.2466 (R: qbeta(0.1, 3, 3),
  // from memory).
  const { low, high } = sumRange([{ low: 0, likely: 3000_00, high: 6000_00, chance: 1 }]);
  expect(low / 6000_00).toBeCloseTo(0.2466, 2);
  expect(high / 6000_00).toBeCloseTo(1 - 0.2466, 2);
});

test('lies within what the costs can come to', () => {
  const cost = fc.record({
    a: fc.nat(900_00),
    b: fc.nat(900_00),
    c: fc.nat(900_00),
    chance: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(cost, { minLength: 1, maxLength: 6 }), (rows) => {
      const costs = rows.map(({ a, b, c, chance }): UncertainCost => {
        const [low = 0, likely = 0, high = 0] = [a, b, c].sort((one, other) => one - other);
        return { low, likely, high, chance };
      });
      const { low, high } = sumRange(costs);
      const most = costs.reduce((sum, one) => sum + one.high, 0);
      expect(low).toBeGreaterThanOrEqual(0);
      expect(high).toBeGreaterThanOrEqual(low);
      expect(high).toBeLessThanOrEqual(most);
    }),
    { numRuns: 60 },
  );
});
