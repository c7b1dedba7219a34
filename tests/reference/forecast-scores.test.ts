import { describe, expect, test } from 'vitest';
import { crpsOfLognormal, crpsUnderCap } from '../../src/domain/learn/scores/crps.ts';
import { wilson } from '../../src/domain/learn/scores/wilson.ts';
import { chanceBelow, type Lognormal } from '../../src/domain/statistics/lognormal.ts';

describe('a share and its range', () => {
  // Newcombe 1998, Statistics in Medicine 17:857–872, table I, method 3 (score, no continuity correction); from memory.
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i is the interval that Newcombe prints', (hits, cases, low, high) => {
    const range = wilson(hits, cases);
    expect(range.low).toBeCloseTo(low, 4);
    expect(range.high).toBeCloseTo(high, 4);
  });

  test('the plain interval of Wald is another, and for 0 of 20 has no width', () => {
    const { share } = wilson(0, 20);
    expect(1.96 * Math.sqrt((share * (1 - share)) / 20)).toBe(0);
    expect(wilson(0, 20).high).toBeGreaterThan(0.16);
  });
});

/** The definition, by the midpoint rule. */
function crpsByDefinition(below: (x: number) => number, actual: number, to: number): number {
  const panels = 400_000;
  const step = to / panels;
  let sum = 0;
  for (let i = 0; i < panels; i++) {
    const x = (i + 0.5) * step;
    sum += (below(x) - (x >= actual ? 1 : 0)) ** 2 * step;
  }
  return sum;
}

describe('the score of a whole range', () => {
  // Values computed independently, by quadrature of the definition.
  test.each([
    [17_000, 578.00653],
    [18_000, 336.64754],
    [20_000, 1321.21632],
  ])('of a lognormal with mean 18,000 and a spread of 8%, for a car that brought %i', (actual, score) => {
    expect(crpsOfLognormal({ mean: 18_000, sigma: 0.08 }, actual)).toBeCloseTo(score, 4);
  });

  test('of the standard lognormal at 1', () => {
    expect(crpsOfLognormal({ mean: Math.exp(0.5), sigma: 1 }, 1)).toBeCloseTo(0.26740547, 7);
  });

  test('without any spread is the plain error', () => {
    expect(crpsOfLognormal({ mean: 18_000, sigma: 0 }, 17_200)).toBe(800);
    expect(crpsUnderCap({ mean: 18_000, sigma: 0 }, 17_500, 17_200)).toBe(300);
  });

  test.each([
    [17_000, 17_500],
    [17_500, 17_500],
    [18_200, 17_500],
    [16_000, 40_000],
  ])('under a ceiling, for %i under %i, is the integral of its definition', (actual, cap) => {
    const forecast: Lognormal = { mean: 18_000, sigma: 0.08 };
    const below = (x: number) => (x >= cap ? 1 : chanceBelow(forecast, x));
    const score = crpsByDefinition(below, actual, Math.max(actual, cap) * 1.01);
    expect(Math.abs(crpsUnderCap(forecast, cap, actual) - score)).toBeLessThan(0.1);
  });

  test('under a ceiling that nothing reaches is the same as without one', () => {
    const forecast = { mean: 18_000, sigma: 0.08 };
    expect(crpsUnderCap(forecast, 60_000, 17_000)).toBeCloseTo(crpsOfLognormal(forecast, 17_000), 2);
  });
});
