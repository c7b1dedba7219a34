import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LEAST_SALES, type RetailCase, retailScore } from '../../../src/domain/learn/scores/retail-score.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { tQuantile } from '../../../src/domain/statistics/student-t.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { chances, daysAgo, retailOf, sale, TODAY } from './cases.ts';

const looking = { today: TODAY };

describe('the score of retail', () => {
  test('is hidden below the least number of sales, and says how many are missing', () => {
    const few = Array.from({ length: LEAST_SALES - 3 }, (_, i) => sale(`${i}`, 18_000));
    expect(retailScore(few, looking)).toEqual({ cases: 5, least: 8, missing: 3, score: null });
    expect(retailScore([], looking)).toMatchObject({ cases: 0, missing: 8, score: null });
  });

  test('counts cars inside the range, its ends included, and those below and above it', () => {
    const forecast = retailOf(18_000);
    const exact = (cents_: number, lot: string): RetailCase => ({ lot, date: TODAY, forecast, actual: cents(cents_) });
    const cases = [
      exact(forecast.low, 'a'),
      exact(forecast.low - 1, 'b'),
      exact(forecast.high, 'c'),
      exact(forecast.high + 1, 'd'),
      ...['e', 'f', 'g', 'h', 'i', 'j'].map((lot) => exact(1_800_000, lot)),
    ];
    const { score } = retailScore(cases, looking);
    expect(score?.inside.share).toBeCloseTo(0.8, 12);
    expect(score).toMatchObject({ below: 0.1, above: 0.1, error: expect.any(Number) });
  });

  test('puts each car into its fifth of the forecast', () => {
    const scale = 0.08;
    const at_ = (p: number) => 18_000 * Math.exp(tQuantile(p, 8) * scale);
    const places = [0.05, 0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95];
    const cases = places.map((p, i) => sale(`${i}`, at_(p)));
    const { score } = retailScore(cases, looking);
    expect(score?.fifths.map(({ share }) => share)).toEqual(
      [0.2, 0.2, 0.2, 0.2, 0.2].map((share) => expect.closeTo(share, 12)),
    );
  });

  test('spreads a car that reached its ceiling over the chance that stands there', () => {
    const capped = { ...retailOf(18_000), cap: cents(1_800_000) };
    const cases = Array.from({ length: 8 }, (_, i) => sale(`${i}`, 18_000, capped));
    const fifths = retailScore(cases, looking).score?.fifths.map(({ share }) => share) ?? [];
    // The middle of the forecast is its ceiling: half of the chance is on it, from the middle of the third fifth on.
    expect(fifths).toEqual([0, 0, 0.2, 0.4, 0.4].map((share) => expect.closeTo(share, 9)));
  });

  test('counts an old sale for half after each half-life', () => {
    const cases = [
      ...Array.from({ length: 8 }, (_, i) => sale(`new-${i}`, 18_000)),
      ...Array.from({ length: 8 }, (_, i) => sale(`old-${i}`, 30_000, retailOf(18_000), 180)),
    ];
    expect(retailScore(cases, looking).score?.inside.share).toBeCloseTo(8 / 12, 12);
    expect(retailScore(cases, { today: TODAY, halfLifeDays: 90 }).score?.inside.share).toBeCloseTo(8 / 10, 12);
  });

  test('is the same in whatever order the cars come, to the last digit', () => {
    const random = chances(11);
    const cases = Array.from({ length: 24 }, (_, i) =>
      sale(
        `${i}`,
        Math.round(15_000 + 6000 * random()),
        retailOf(18_000, 0.05 + 0.1 * random()),
        Math.floor(400 * random()),
      ),
    );
    const first = retailScore(cases, looking);
    fc.assert(
      fc.property(fc.shuffledSubarray(cases, { minLength: 24 }), (other) => {
        expect(retailScore(other, looking)).toEqual(first);
      }),
      { numRuns: 30 },
    );
  });

  test('holds eight in ten for cars that come out of the very forecast, and finds a level that is 5% too high', () => {
    const random = chances(5);
    const drawn = (factor: number) =>
      Array.from({ length: 100 }, (_, i) => {
        const price = 18_000 * factor * Math.exp(tQuantile(random() * 0.9998 + 0.0001, 8) * 0.08);
        return sale(`${i}`, price, retailOf(18_000), i % 30);
      });
    const fair = Array.from({ length: 40 }, () => retailScore(drawn(1), looking).score);
    const holds = fair.filter((score) => score && score.inside.low < 0.8 && score.inside.high > 0.8);
    // 19 in 20 are meant: of forty, five or more misses come once in twenty runs.
    expect(holds.length).toBeGreaterThanOrEqual(36);
    expect(fair.filter((score) => score?.level.clear).length).toBeLessThanOrEqual(2);
    const high = retailScore(drawn(0.94), looking).score;
    expect(high?.level).toMatchObject({ clear: true });
    expect(high?.level.low).toBeLessThan(0.945);
    expect(high?.level.high).toBeLessThan(1);
  });

  test('without a case the level is what is believed beforehand: no correction', () => {
    const cases = [sale('a', 18_000)];
    expect(at(cases, 0).date).toBe(daysAgo(0));
    expect(retailScore(cases, looking).score).toBeNull();
  });
});
