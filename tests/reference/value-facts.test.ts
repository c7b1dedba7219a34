import { describe, expect, test } from 'vitest';
import { cents } from '../../src/domain/money/cents.ts';
import { applyCeilings, ceilingSchema } from '../../src/domain/retail/ceiling.ts';
import { DEFAULT_ESTIMATION } from '../../src/domain/retail/estimation.ts';
import { type LeastSquares, leastSquares, type Row } from '../../src/domain/statistics/least-squares.ts';
import { tQuantile } from '../../src/domain/statistics/student-t.ts';

const numbers = (text: string): number[] => text.trim().split(/\s+/).map(Number);
const pairs = (x: readonly number[], y: readonly number[]): Row[] =>
  y.map((value, i) => ({ y: value, x: [1, x[i] ?? Number.NaN] }));
function fitted(rows: readonly Row[]): LeastSquares {
  const fit = leastSquares(rows);
  if (fit === undefined) throw new Error('no fit');
  return fit;
}
/** The fit at `x`, and how far a new observation and the line itself may lie from it with 95% confidence. */
function predicted(fit: LeastSquares, x: number) {
  const [b0 = 0, b1 = 0] = fit.coefficients;
  const [[a = 0, b = 0] = [], [, d = 0] = []] = fit.inverse;
  const spread = Math.sqrt(fit.residualSquares / fit.freedom);
  const leverage = a + 2 * b * x + d * x * x;
  const t = tQuantile(0.975, fit.freedom);
  return { at: b0 + b1 * x, new: t * spread * Math.sqrt(1 + leverage), line: t * spread * Math.sqrt(leverage) };
}

describe('what a new one after its rebate leaves of a year-old one', () => {
  // Common practice, no source: a slow new car sells for list less the usual markup of about a tenth less the maker's rebate.
  test.each([242_000, 243_500, 245_000])('with a list price of $%d comes within $3,000 of $200,000', (list) => {
    const ceiling = ceilingSchema.parse({
      kind: 'new',
      label: 'A new one, slow to sell',
      list: list * 100,
      markup: 100_000,
      rebate: 20_000_00,
    });
    const [applied] = applyCeilings([ceiling]);
    expect(Math.abs((applied?.cap ?? 0) - 200_000_00)).toBeLessThanOrEqual(3_000_00);
  });

  test('is, to the cent, list less the tenth less the rebate (worked by hand)', () => {
    const [applied] = applyCeilings([
      ceilingSchema.parse({ kind: 'new', label: 'New', list: 245_000_00, markup: 100_000, rebate: 20_000_00 }),
    ]);
    expect(applied?.steps.map((step) => step.cents)).toEqual([24_500_00, 20_000_00]);
    expect(applied?.cap).toBe(cents(200_500_00));
  });
});

describe('what 10,000 more miles take off', () => {
  const { milesSlopePpm, milesSlopeDoubtPpm } = DEFAULT_ESTIMATION;
  const within = (share: number) => Math.abs(share - milesSlopePpm / 1e6) / (milesSlopeDoubtPpm / 1e6);

  test('agrees, within its own doubt, with a hundred cars of one model at auction: 6.2 cents a mile at a mean of $14,822 (statistics textbook)', () => {
    expect(within((0.062 * 10_000) / 14_822)).toBeLessThan(1);
  });

  test('and with nineteen used sedans of a textbook: 4.92% (computed independently)', () => {
    expect(within(0.0492)).toBeLessThan(1);
  });
});

describe('a line through prices predicts as it should', () => {
  test('for the nineteen sedans at 60,000 miles (computed independently)', () => {
    const miles = numbers('22 29 36 47 63 77 73 87 92 101 110 28 59 68 68 91 42 65 110');
    const price = numbers('16.2 16 13.8 11.5 12.5 12.9 11.2 13 11.8 10.8 8.3 12.5 11.1 15 12.2 13 15.6 12.7 8.3');
    const { at, new: reach, line } = predicted(fitted(pairs(miles, price)), 60);
    expect(at).toBeCloseTo(12.943319, 6);
    expect(at - reach).toBeCloseTo(9.601552, 5);
    expect(at + reach).toBeCloseTo(16.285087, 5);
    expect(at - line).toBeCloseTo(12.174052, 5);
    expect(at + line).toBeCloseTo(13.712586, 5);
  });

  test('for the NIST Norris data at 100 and at 500 (computed independently)', () => {
    const x = numbers(
      '0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0 447.5 11.6 556.0 228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5',
    );
    const y = numbers(
      '0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 448.9 10.8 557.7 228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2',
    );
    const fit = fitted(pairs(x, y));
    for (const [place, middle, low, high] of [
      [100, 99.949359, 98.105239, 101.793479],
      [500, 500.796086, 498.971794, 502.620378],
    ] as const) {
      const { at, new: reach } = predicted(fit, place);
      expect(at).toBeCloseTo(middle, 6);
      expect(at - reach).toBeCloseTo(low, 6);
      expect(at + reach).toBeCloseTo(high, 6);
    }
    // Certified R squared.
    const mean = y.reduce((sum, value) => sum + value, 0) / y.length;
    const total = y.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    expect(1 - fit.residualSquares / total).toBeCloseTo(0.999993745883712, 12);
  });

  test('for the prices of the AP Statistics examination of 1997, problem 6, in year 88: the logarithm suits prices better', () => {
    const year = numbers('90 91 92 87 93 91 93 85 84 82 86 79');
    const price = numbers('6.0 7.7 8.8 3.4 9.8 8.4 8.9 1.5 1.6 1.4 2.0 1.0');
    const straight = predicted(fitted(pairs(year, price)), 88).at;
    const logarithmic = Math.exp(predicted(fitted(pairs(year, price.map(Math.log))), 88).at);
    const root = predicted(fitted(pairs(year, price.map(Math.sqrt))), 88).at ** 2;
    // Computed independently.
    expect([straight, logarithmic, root].map((value) => value.toFixed(4))).toEqual(['5.2214', '3.8859', '4.5727']);
  });
});
