import { describe, expect, test } from 'vitest';
import { betaQuantile, canceledRate } from '../../src/domain/learn/corrections/canceled-rate.ts';
import { daysLearned } from '../../src/domain/learn/corrections/days-learned.ts';
import { posterior, ratioLearned } from '../../src/domain/learn/corrections/log-ratio.ts';
import { gammaQuantile, incompleteGamma } from '../../src/domain/statistics/incomplete-gamma.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { DAY } from '../../src/domain/time/units.ts';

describe('the gamma distribution', () => {
  // Upper critical values of chi-square: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4.
  test.each([
    [1, 0.95, 3.841],
    [2, 0.99, 9.21],
    [5, 0.9, 9.236],
    [10, 0.95, 18.307],
    [30, 0.975, 46.979],
    [100, 0.95, 124.342],
  ])('has the chi-square table’s value for %d degrees of freedom at %d', (freedom, chance, critical) => {
    expect(2 * gammaQuantile(chance, freedom / 2)).toBeCloseTo(critical, 3);
  });

  test('of shape 1 is the exponential, and its chances of either branch meet', () => {
    expect(incompleteGamma(1, 0.5)).toBeCloseTo(1 - Math.exp(-0.5), 14);
    expect(incompleteGamma(1, 7)).toBeCloseTo(1 - Math.exp(-7), 14);
    expect(incompleteGamma(4, 5 - 1e-9)).toBeCloseTo(incompleteGamma(4, 5 + 1e-9), 8);
  });

  test.each([0, 1, Number.NaN])('has no quantile at %d', (p) => {
    expect(() => gammaQuantile(p, 2)).toThrow(RangeError);
  });
});

describe('a share from counts', () => {
  test('is the exact binomial range of the handbook where its ends are beta quantiles (4 of 20: NIST/SEMATECH e-Handbook 7.2.4.1)', () => {
    // The handbook's worked example: N = 20, 4 failures, 90% two-sided: 0.071354 to 0.401029.
    expect(betaQuantile(0.05, 4, 17)).toBeCloseTo(0.071354, 5);
    expect(betaQuantile(0.95, 5, 16)).toBeCloseTo(0.401029, 5);
  });

  test('adds each purchase to a Beta(1, 30): 2 of 29 canceled give 3 in 60 (by hand)', () => {
    const now = instant(0);
    const purchases = Array.from({ length: 29 }, (_, i) => ({ at: now, ...(i < 2 && { canceledAt: now }) }));
    expect(canceledRate(purchases, 0.03, now).value).toBeCloseTo(3 / 60, 12);
    expect(canceledRate([], 0.03, now).value).toBeCloseTo(1 / 31, 12);
  });
});

describe('a normal-inverse-gamma posterior', () => {
  test('is the one of the textbook formula, worked by hand', () => {
    // κ0 = 5, μ0 = −0.03125, ν0 = 6, s0 = 0.25; two logs 0.1 and 0.3: mean 0.2, κ = 7, ν = 8.
    const after = posterior(
      [
        { log: 0.1, weight: 1 },
        { log: 0.3, weight: 1 },
      ],
      { spread: 0.25, cases: 5, freedom: 6 },
    );
    expect(after.mean).toBeCloseTo((5 * -0.03125 + 2 * 0.2) / 7, 14);
    expect(after.variance).toBeCloseTo((6 * 0.0625 + 0.02 + (10 / 7) * 0.23125 ** 2) / 8, 14);
  });

  test('goes to Cox’s range of a lognormal mean (Olsson 2005, Journal of Statistics Education 13:1; formula, computed independently)', () => {
    // A thousand logs of exactly mean 0.1 and variance 0.04, beside nearly no belief.
    const n = 1000;
    const logs = Array.from({ length: n }, (_, i) => ({ log: 0.1 + (i % 2 === 0 ? 0.2 : -0.2), weight: 1 }));
    const { value, low, high } = ratioLearned(logs, { spread: 0.2, cases: 1e-9, freedom: 1e-9 });
    const reach = 1.962341 * Math.sqrt(0.04 / n + 0.04 ** 2 / (2 * n));
    expect(Math.log(value)).toBeCloseTo(0.12, 9);
    expect(Math.log(low)).toBeCloseTo(0.12 - reach, 6);
    expect(Math.log(high)).toBeCloseTo(0.12 + reach, 6);
  });
});

/** A half-life in days that no car lives to see. */
const FORGETS_NOTHING = 1e12;

describe('days to sell from the cars bought', () => {
  test('are the conjugate median worked out before: sold after 20, 35 and 60 days, one unsold at 90 (computed independently)', () => {
    const now = instant(1000 * DAY);
    const came = (days: number) => instant(now - days * DAY);
    const after = daysLearned(
      [20, 35, 60].map((days) => ({ from: came(days), at: came(days), sold: { on: now, at: now } })),
      { medianDays: 40, record: [{ enteredAt: 0, days: 90, sold: false }] },
      now,
      FORGETS_NOTHING,
    );
    // a = 2 + 3; b = 40^1.25/(√2 − 1) + 20^1.25 + 35^1.25 + 60^1.25 + 90^1.25.
    const b = 40 ** 1.25 / (Math.SQRT2 - 1) + 20 ** 1.25 + 35 ** 1.25 + 60 ** 1.25 + 90 ** 1.25;
    expect(after.countsFor).toBeCloseTo(5, 9);
    expect(after.value).toBeCloseTo((b * (2 ** (1 / 5) - 1)) ** 0.8, 6);
  });

  test('with little belief go to the rate of 9 in 359 weeks of the 6-MP remissions, were the shape 1 (Cox & Oakes 1984), at shape 1.25 to 9 over the sum of t^1.25', () => {
    const sold = [6, 6, 6, 7, 10, 13, 16, 22, 23];
    const still = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
    expect([...sold, ...still].reduce((sum, t) => sum + t, 0)).toBe(359);
    const times = 4000;
    const now = instant(100 * DAY);
    const from = (t: number) => instant(now - t * DAY);
    const cars = [
      ...sold.map((t) => ({ from: from(t), at: from(t), sold: { on: now, at: now } })),
      ...still.map((t) => ({ from: from(t), at: from(t) })),
    ];
    const many = Array.from({ length: times }, () => cars).flat();
    const rate = 9 / [...sold, ...still].reduce((sum, t) => sum + t ** 1.25, 0);
    const after = daysLearned(many, { medianDays: 40, record: [] }, now, FORGETS_NOTHING);
    expect(after.value / (Math.LN2 / rate) ** 0.8).toBeCloseTo(1, 3);
  });
});
