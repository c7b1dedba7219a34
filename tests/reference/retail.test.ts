import { describe, expect, test } from 'vitest';
import { cents } from '../../src/domain/money/cents.ts';
import { ppm } from '../../src/domain/money/rate.ts';
import { compSchema } from '../../src/domain/retail/comp.ts';
import { DEFAULT_ESTIMATION } from '../../src/domain/retail/estimation.ts';
import { retailFromComps } from '../../src/domain/retail/retail-from-comps.ts';

const dollars = (amount: number) => cents(Math.round(amount * 100));

// Source of the formula: normal-inverse-gamma posterior, Gelman et al., Bayesian Data Analysis, 3rd ed., 3.3. The figures are
// invented, so no published table has them.
// The car to value: 60,000 miles, model year 2020; guess $18,000, between $16,000 and $20,000. Computed independently.
const guess = { low: dollars(16_000), likely: dollars(18_000), high: dollars(20_000) };
const comps = [
  { kind: 'sold', price: 19_500_00, miles: 45_000, year: 2020 },
  { kind: 'sold', price: 17_200_00, miles: 72_000, year: 2020 },
  { kind: 'sold', price: 18_900_00, miles: 50_000, year: 2021 },
].map((comp) => compSchema.parse(comp));
const knownSlopes = { ...DEFAULT_ESTIMATION, milesSlopeDoubtPpm: ppm(0), yearSlopeDoubtPpm: ppm(0) };
const valued = (n: number, settings = knownSlopes) =>
  retailFromComps({ guess, comps: comps.slice(0, n), subject: { miles: 60_000, year: 2020 }, settings });

describe('retail from a guess and comparables (computed independently)', () => {
  test.each([
    [0, 18_000, 15_325.75, 21_140.88, 6, 0.07, 0.111711, 0.125502],
    [1, 18_137.65, 16_145.03, 20_376.19, 7, 0.064875, 0.08225, 0.09081],
    [2, 18_143.95, 16_425.51, 20_042.17, 8, 0.060686, 0.071235, 0.077641],
    [3, 17_584.65, 15_868.83, 19_485.98, 9, 0.065763, 0.074235, 0.080113],
  ])('with %d of them is $%d, from $%d to $%d', (n, middle, low, high, freedom, spread, scale, sigma) => {
    const retail = valued(n);
    expect(retail?.middle).toBe(dollars(middle));
    expect(retail?.low).toBe(dollars(low));
    expect(retail?.high).toBe(dollars(high));
    expect(retail?.freedom).toBe(freedom);
    expect(retail?.carSpread).toBeCloseTo(spread, 6);
    expect(retail?.scale).toBeCloseTo(scale, 6);
    expect(retail?.sigma).toBeCloseTo(sigma, 6);
    expect(retail?.guessCounts).toBeCloseTo(0.6464866, 6);
    expect(retail?.counted).toBe(n);
  });

  test('adjusts each comparable to the lot', () => {
    expect(valued(3)?.comps.map(({ adjusted }) => adjusted)).toEqual([18_227.19, 18_154.34, 16_186.25].map(dollars));
  });

  test('is a little wider when the slopes themselves are in doubt (worked by hand for one comparable)', () => {
    const sure = valued(1)?.scale ?? 0;
    const doubtful = valued(1, DEFAULT_ESTIMATION)?.scale ?? 0;
    expect(doubtful ** 2 - sure ** 2).toBeCloseTo(((1 / 1.6464866) * 1.5 * 0.015) ** 2, 9);
  });
});
