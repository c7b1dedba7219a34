import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { applyCeilings, type Ceiling, cappedMean, ceilingSchema } from '../../../src/domain/retail/ceiling.ts';

const ceiling = (over: object): Ceiling =>
  ceilingSchema.parse({ kind: 'new', label: 'This year’s, new', list: 30_000_00, ...over });

describe('a ceiling', () => {
  test('of a new one at $242,000 to $245,000 with a tenth of markup and $20,000 of rebate is about $200,000 (common practice, no source)', () => {
    for (const list of [242_000_00, 243_500_00, 245_000_00]) {
      const [applied] = applyCeilings([ceiling({ list, markup: 100_000, rebate: 20_000_00 })]);
      expect(Math.abs((applied?.cap ?? 0) - 200_000_00)).toBeLessThanOrEqual(3_000_00);
    }
  });

  test('adds up from the price of the substitute, and is never below nothing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30_000_000 }),
        fc.integer({ min: 0, max: 1_000_000 }),
        fc.integer({ min: 0, max: 5_000_000 }),
        fc.integer({ min: -500_000, max: 500_000 }),
        (list, markup, rebate, cheaperBy) => {
          const [applied] = applyCeilings([ceiling({ list, markup, rebate, cheaperBy })]);
          const left = (applied?.steps ?? []).reduce((sum, step) => sum - step.cents, list);
          expect(applied?.cap).toBe(Math.max(0, left));
        },
      ),
    );
  });

  test('counts only when it is the lowest', () => {
    const applied = applyCeilings([ceiling({ list: 300 }), ceiling({ list: 200 }), ceiling({ list: 200 })]);
    expect(applied.map(({ cap, lowest }) => [cap, lowest])).toEqual([
      [300, false],
      [200, true],
      [200, false],
    ]);
    expect(applyCeilings([])).toEqual([]);
  });
});

describe('retail under a ceiling', () => {
  test('is E[min(R, cap)]: mean 18,000, spread 8%, cap 17,000 leaves 17,000 − 195.00 (computed independently)', () => {
    expect(cappedMean({ mean: 18_000_00, sigma: 0.08 }, cents(17_000_00))).toBe(16_805_00);
  });

  test('is about 3% lower where mean and cap meet (worked by hand: σ ÷ √(2π))', () => {
    const mean = cappedMean({ mean: 18_000_00, sigma: 0.08 }, cents(18_000_00));
    expect(1 - mean / 18_000_00).toBeCloseTo(0.08 / Math.sqrt(2 * Math.PI), 3);
  });

  test('is never above the cap nor above what it would be without one, and more doubt never raises it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100_000, max: 9_000_000 }),
        fc.integer({ min: 0, max: 12_000_000 }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        (mean, cap, one, other) => {
          const [less, more] = one < other ? [one, other] : [other, one];
          const surer = cappedMean({ mean, sigma: less }, cents(cap));
          expect(surer).toBeLessThanOrEqual(Math.min(mean, cap));
          expect(surer).toBeGreaterThanOrEqual(0);
          expect(cappedMean({ mean, sigma: more }, cents(cap))).toBeLessThanOrEqual(surer);
        },
      ),
    );
  });
});
