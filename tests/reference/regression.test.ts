import { describe, expect, test } from 'vitest';
import { compSlopes } from '../../src/domain/learn/corrections/comp-slopes.ts';
import { ppm } from '../../src/domain/money/rate.ts';
import { compSchema } from '../../src/domain/retail/comp.ts';
import { DEFAULT_ESTIMATION } from '../../src/domain/retail/estimation.ts';
import { type LeastSquares, leastSquares, type Row } from '../../src/domain/statistics/least-squares.ts';
import { instant } from '../../src/domain/time/instant.ts';

const numbers = (text: string): number[] => text.trim().split(/\s+/).map(Number);
const pairs = (x: readonly number[], y: readonly number[]): Row[] =>
  y.map((value, i) => ({ y: value, x: [1, x[i] ?? Number.NaN] }));
function fitted(rows: readonly Row[]): LeastSquares {
  const fit = leastSquares(rows);
  if (fit === undefined) throw new Error('no fit');
  return fit;
}
const spread = ({ residualSquares, freedom }: LeastSquares) => Math.sqrt(residualSquares / freedom);
const errors = (fit: LeastSquares) => fit.inverse.map((row, i) => spread(fit) * Math.sqrt(row[i] ?? 0));
function expectNear(actual: readonly number[], expected: readonly number[], relative: number): void {
  expect(actual).toHaveLength(expected.length);
  actual.forEach((value, i) => {
    const wanted = expected[i] ?? Number.NaN;
    expect(Math.abs(value - wanted) / Math.abs(wanted)).toBeLessThan(relative);
  });
}

describe('least squares', () => {
  // NIST Statistical Reference Datasets, Norris.
  const x = numbers(
    '0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0 447.5 11.6 556.0 228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5',
  );
  const y = numbers(
    '0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 448.9 10.8 557.7 228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2',
  );

  test('gives the certified coefficients and errors of Norris (NIST StRD)', () => {
    const fit = fitted(pairs(x, y));
    expectNear(fit.coefficients, [-0.262323073774029, 1.00211681802045], 1e-12);
    expectNear(errors(fit), [0.232818234301152, 0.000429796848199937], 1e-10);
    expect(spread(fit)).toBeCloseTo(0.884796396144373, 11);
  });

  test('takes the residual spread with two degrees of freedom less than rows', () => {
    const fit = fitted(pairs(x, y));
    expect(fit.freedom).toBe(34);
    expect(Math.sqrt(fit.residualSquares / 36)).not.toBeCloseTo(0.884796396144373, 3);
  });

  test('gives the certified coefficients and errors of Longley (NIST StRD), whose columns nearly repeat each other', () => {
    const rows = `60323 83.0 234289 2356 1590 107608 1947 | 61122 88.5 259426 2325 1456 108632 1948
      | 60171 88.2 258054 3682 1616 109773 1949 | 61187 89.5 284599 3351 1650 110929 1950
      | 63221 96.2 328975 2099 3099 112075 1951 | 63639 98.1 346999 1932 3594 113270 1952
      | 64989 99.0 365385 1870 3547 115094 1953 | 63761 100.0 363112 3578 3350 116219 1954
      | 66019 101.2 397469 2904 3048 117388 1955 | 67857 104.6 419180 2822 2857 118734 1956
      | 68169 108.4 442769 2936 2798 120445 1957 | 66513 110.8 444546 4681 2637 121950 1958
      | 68655 112.6 482704 3813 2552 123366 1959 | 69564 114.2 502601 3931 2514 125368 1960
      | 69331 115.7 518173 4806 2572 127852 1961 | 70551 116.9 554894 4007 2827 130081 1962`
      .split('|')
      .map(numbers)
      .map(([first = Number.NaN, ...rest]): Row => ({ y: first, x: [1, ...rest] }));
    const fit = fitted(rows);
    expectNear(
      fit.coefficients,
      [
        -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
        -0.0511041056535807, 1829.15146461355,
      ],
      1e-8,
    );
    expectNear(
      errors(fit),
      [
        890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.22607320006937,
        455.478499142212,
      ],
      1e-8,
    );
    expect(spread(fit)).toBeCloseTo(304.854073561965, 6);
  });

  test('finds the ones of Wampler1 (NIST StRD)', () => {
    const rows = Array.from({ length: 21 }, (_, i): Row => {
      const powers = [0, 1, 2, 3, 4, 5].map((k) => i ** k);
      return { y: powers.reduce((sum, value) => sum + value, 0), x: powers };
    });
    for (const coefficient of fitted(rows).coefficients) expect(coefficient).toBeCloseTo(1, 8);
  });

  test('agrees with the AP Statistics examination of 1997, problem 6, straight and logarithmic', () => {
    const year = numbers('90 91 92 87 93 91 93 85 84 82 86 79');
    const price = numbers('6.0 7.7 8.8 3.4 9.8 8.4 8.9 1.5 1.6 1.4 2.0 1.0');
    const straight = fitted(pairs(year, price));
    expect(straight.coefficients[0]).toBeCloseTo(-58.0503, 4);
    expect(straight.coefficients[1]).toBeCloseTo(0.719, 4);
    expect(errors(straight)[0]).toBeCloseTo(7.205, 3);
    expect(errors(straight)[1]).toBeCloseTo(0.082, 4);
    const logarithmic = fitted(pairs(year, price.map(Math.log)));
    expect(logarithmic.coefficients[0]).toBeCloseTo(-14.92444, 5);
    expect(logarithmic.coefficients[1]).toBeCloseTo(0.18502, 5);
    expect(errors(logarithmic)[1]).toBeCloseTo(0.01392, 5);
    expect(spread(logarithmic)).toBeCloseTo(0.213, 3);
  });

  test('gives up where two columns are the same', () => {
    expect(leastSquares([1, 2, 3].map((value) => ({ y: value, x: [value, 2 * value] })))).toBeUndefined();
    expect(leastSquares([{ y: 1, x: [1, 2] }])).toBeUndefined();
  });
});

describe('a mileage slope from comparables', () => {
  // Nineteen sedans of a textbook on used-car prices: thousands of miles and thousands of dollars.
  const miles = numbers('22 29 36 47 63 77 73 87 92 101 110 28 59 68 68 91 42 65 110');
  const price = numbers('16.2 16 13.8 11.5 12.5 12.9 11.2 13 11.8 10.8 8.3 12.5 11.1 15 12.2 13 15.6 12.7 8.3');
  const sedans = (list: readonly number[]) =>
    list.map((k, i) =>
      compSchema.parse({
        kind: 'sold',
        price: Math.round((price[i] ?? 0) * 100_000),
        miles: k * 1000,
        year: 2000,
      }),
    );

  test('comes to the straight line of the textbook, and to −4.92% per 10,000 miles in logarithms (computed independently)', () => {
    const straight = fitted(pairs(miles, price));
    expect(miles.reduce((sum, value) => sum + value, 0)).toBe(1268);
    expect(straight.coefficients[0]).toBeCloseTo(16.469755, 6);
    expect(straight.coefficients[1]).toBeCloseTo(-0.0587739, 7);
    expect(spread(straight)).toBeCloseTo(1.541377, 6);
    const logarithmic = fitted(pairs(miles, price.map(Math.log)));
    expect((logarithmic.coefficients[1] ?? 0) * 10).toBeCloseTo(-0.0492, 4);
    expect((errors(logarithmic)[1] ?? 0) * 10).toBeCloseTo(0.0111, 4);
  });

  test('that nobody believed anything about beforehand is the one of least squares', () => {
    const vague = { ...DEFAULT_ESTIMATION, milesSlopeDoubtPpm: ppm(1_000_000) };
    const now = instant(0);
    const learned = compSlopes([{ at: now, comps: sedans(miles) }], vague, now);
    expect(learned.miles.value).toBeCloseTo(0.0492, 3);
    expect(learned.miles.cases).toBe(19);
    expect(learned.years.value).toBeCloseTo(DEFAULT_ESTIMATION.yearSlopePpm / 1e6, 12);
    expect(learned.asking.value).toBeCloseTo(DEFAULT_ESTIMATION.askingRatioPpm / 1e6, 12);
  });
});
