import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ChanceCase, chanceScore, LEAST_BIDS } from '../../../src/domain/learn/scores/chance-score.ts';
import { chances, daysAgo, TODAY } from './cases.ts';

const looking = { today: TODAY };
const bid = (lot: number, chance: number, won: boolean, days = 0): ChanceCase => ({
  lot: `${1000 + lot}`,
  date: daysAgo(days),
  chance,
  won,
});

describe('the score of chances', () => {
  test('is hidden below thirty bids', () => {
    const few = Array.from({ length: 29 }, (_, i) => bid(i, 0.3, false));
    expect(chanceScore(few, looking)).toMatchObject({ cases: 29, least: LEAST_BIDS, missing: 1, score: null });
  });

  test('is the mean square of chance less outcome, beside what the plain share of wins would score', () => {
    // Brier 1950, Monthly Weather Review 78:1–3, in its two-sided form: 0.7 said and it came is 0.09; 0.3 said and it came 0.49.
    const cases = Array.from({ length: 30 }, (_, i) => bid(i, i % 3 === 0 ? 0.7 : 0.3, i % 3 === 0));
    const { score } = chanceScore(cases, looking);
    expect(score?.brier).toBeCloseTo(0.09, 12);
    expect(score?.baseRate.chance).toBeCloseTo(1 / 3, 12);
    expect(score?.baseRate.brier).toBeCloseTo(2 / 9, 12);
    expect(score?.skill).toBeCloseTo(1 - 0.09 / (2 / 9), 12);
    const lost = Array.from({ length: 30 }, (_, i) => bid(i, 0.1, false));
    expect(chanceScore(lost, looking).score?.skill).toBeNull();
  });

  test('makes at most five bins, and never parts bids that were given the same chance', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(0.05, 0.1, 0.2, 0.35, 0.5, 0.8), fc.boolean()), {
          minLength: 30,
          maxLength: 80,
        }),
        (bids) => {
          const cases = bids.map(([chance, won], i) => bid(i, chance, won));
          const bins = chanceScore(cases, looking).score?.bins ?? [];
          expect(bins.length).toBeLessThanOrEqual(5);
          expect(bins.reduce((sum, { cases: n }) => sum + n, 0)).toBe(cases.length);
          for (const chance of new Set(bids.map(([c]) => c))) {
            const own = bids.filter(([c]) => c === chance).length;
            expect(bins.some(({ cases: n }) => n >= own)).toBe(true);
          }
          const said = bins.map((one) => one.said);
          expect(said).toEqual(said.toSorted((a, b) => a - b));
        },
      ),
      { numRuns: 60 },
    );
  });

  test('of chances that were right says nothing in at least 95 of 100 logs, and of ones twice too high says fewer wins', () => {
    const random = chances(3);
    const log = (factor: number) =>
      Array.from({ length: 120 }, (_, i) => {
        const chance = 0.05 + 0.5 * random();
        return bid(i, Math.min(0.99, chance * factor), random() < chance, i % 20);
      });
    const tilts = Array.from({ length: 100 }, () => chanceScore(log(1), looking).score?.tilt);
    expect(tilts.filter((tilt) => tilt !== null).length).toBeLessThanOrEqual(5);
    expect(chanceScore(log(1.8), looking).score?.tilt).toBe('fewer');
    expect(chanceScore(log(0.4), looking).score?.tilt).toBe('more');
  });

  test('is the same in whatever order the bids come', () => {
    const random = chances(9);
    const cases = Array.from({ length: 60 }, (_, i) =>
      bid(i, Math.round(random() * 10) / 10, random() < 0.3, Math.floor(300 * random())),
    );
    const first = chanceScore(cases, looking);
    expect(chanceScore(cases.toReversed(), looking)).toEqual(first);
    expect(chanceScore([...cases.slice(17), ...cases.slice(0, 17)], looking)).toEqual(first);
  });
});
