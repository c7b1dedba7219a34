import { describe, expect, test } from 'vitest';
import { daysBelief, survivalOf } from '../../../src/domain/carrying/days-to-sell.ts';
import { feeScore, reconScores } from '../../../src/domain/learn/scores/cost-score.ts';
import { type DaysCase, daysScore } from '../../../src/domain/learn/scores/days-score.ts';
import { type PriceCase, priceTrend } from '../../../src/domain/learn/scores/price-trend.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { chances, daysAgo, TODAY } from './cases.ts';

const looking = { today: TODAY };

describe('the score of days to sell', () => {
  const even = (day: number) => 2 ** (-day / 20);
  const car = (lot: number, days: number, sold: boolean): DaysCase => ({
    lot: `${100 + lot}`,
    date: TODAY,
    days,
    sold,
    survives: even,
    median: 20,
  });

  test('counts a car that stands by its days, and hides itself below eight sales however many stand', () => {
    const few = [
      ...Array.from({ length: 7 }, (_, i) => car(i, 20, true)),
      ...Array.from({ length: 9 }, (_, i) => car(20 + i, 60, false)),
    ];
    expect(daysScore(few, looking)).toMatchObject({ cases: 7, missing: 1, score: null });
  });

  test('is sales over the sales that the forecasts make of all days, with the exact range of a count', () => {
    // By hand: chances halve every 20 days, so 20 days of one car are ln 2 of a sale. 8 sold after 20 days and 4 that stand
    // for 40 days make 16 times ln 2.
    const cases = [
      ...Array.from({ length: 8 }, (_, i) => car(i, 20, true)),
      ...Array.from({ length: 4 }, (_, i) => car(20 + i, 40, false)),
    ];
    const { score } = daysScore(cases, looking);
    const expected = 16 * Math.LN2;
    expect(score?.pace?.value).toBeCloseTo(8 / expected, 12);
    // Exact limits of a count of 8: 3.4538 and 15.7632 (Garwood 1936; from memory).
    expect(score?.pace?.low).toBeCloseTo(3.4538 / expected, 4);
    expect(score?.pace?.high).toBeCloseTo(15.7632 / expected, 4);
    expect(score).toMatchObject({ sold: 8, unsold: 4, forecast: 20, actual: 20 });
  });

  test('finds half the pace in cars that take twice as long, which an average of sold cars would hide', () => {
    const random = chances(4);
    const survives = survivalOf(daysBelief(30, [], { priorCars: 4000 }));
    const cases = Array.from({ length: 300 }, (_, i): DaysCase => {
      // Half of them sell within 60 days; all were bought in the last 90.
      const until = 60 * (Math.log(1 / (1 - random())) / Math.LN2) ** 0.8;
      const age = 90 * random();
      const sold = until < age;
      return { lot: `${1000 + i}`, date: TODAY, days: Math.round(Math.min(until, age)), sold, survives, median: 30 };
    });
    const pace = daysScore(cases, looking).score?.pace;
    // Twice the days at this shape is 2 to the power of −1.25 the rate.
    expect(pace?.low).toBeLessThan(2 ** -1.25);
    expect(pace?.high).toBeGreaterThan(2 ** -1.25);
    expect(pace?.high).toBeLessThan(1);
  });

  test('finds the right pace over years of purchases, however much is forgotten', () => {
    const random = chances(6);
    const survives = survivalOf(daysBelief(30, [], { priorCars: 4000 }));
    const cases = Array.from({ length: 500 }, (_, i): DaysCase => {
      const age = 1 + Math.floor(730 * random());
      const until = Math.max(1, Math.ceil(30 * (Math.log(1 / (1 - random())) / Math.LN2) ** 0.8));
      return {
        lot: `${1000 + i}`,
        date: daysAgo(age),
        days: Math.min(until, age),
        sold: until <= age,
        survives,
        median: 30,
      };
    });
    for (const halfLifeDays of [90, 180, 3650]) {
      const pace = daysScore(cases, { today: TODAY, halfLifeDays }).score?.pace;
      expect(pace?.low).toBeLessThan(1);
      expect(pace?.high).toBeGreaterThan(1);
    }
  });

  test('has no pace where a fixed number of days was set', () => {
    const fixed = Array.from({ length: 9 }, (_, i) => ({
      ...car(i, 20, true),
      survives: (day: number) => (day < 15 ? 1 : 0),
    }));
    expect(daysScore(fixed, looking).score?.pace).toBeNull();
  });
});

describe('the scores of bills', () => {
  const bill = (lot: number, label: string, expected: number, actual: number) => ({
    lot: `${100 + lot}`,
    date: daysAgo(lot),
    label,
    expected: cents(expected),
    actual: cents(actual),
  });

  test('take recon lines of one wording together, and hide a line with too few bills', () => {
    const cases = [
      ...Array.from({ length: 6 }, (_, i) => bill(i, i % 2 === 0 ? 'tires ' : 'Tires', 60_000, 75_000)),
      bill(7, 'Paint', 50_000, 40_000),
    ];
    const [tires, paint] = reconScores(cases, looking);
    expect(tires).toMatchObject({
      label: 'Tires',
      cases: 6,
      missing: 0,
      score: { expected: 360_000, actual: 450_000 },
    });
    expect(tires?.score?.ratio?.value).toBeGreaterThan(1);
    expect(tires?.score?.ratio?.value).toBeLessThan(1.25);
    expect(paint).toMatchObject({ label: 'Paint', cases: 1, missing: 4, score: null });
  });

  test('count work that was not needed, or that nobody expected, in the sums and not in the ratio', () => {
    const cases = [
      bill(1, 'Glass', 20_000, 0),
      ...[2, 3, 4, 5].map((lot) => bill(lot, 'Glass', 25_000, 30_000)),
      bill(6, 'Hitch', 0, 18_000),
    ];
    const [glass, hitch] = reconScores(cases, looking);
    expect(glass).toMatchObject({ cases: 5, score: { expected: 120_000, actual: 120_000, ratio: { cases: 4 } } });
    expect(hitch).toMatchObject({ cases: 1, score: null });
    const often = reconScores(
      [1, 2, 3, 4, 5].map((lot) => bill(lot, 'Hitch', 0, 18_000)),
      looking,
    );
    expect(often[0]?.score).toEqual({ expected: 0, actual: 90_000, ratio: null });
  });

  test('say how far a venue bills off on average, with a range', () => {
    // Computed independently: $80, $80 and $75 over are $78.33 on average, from $71.16 to $85.50.
    const cases = [
      bill(1, 'Saltgrass', 54_500, 62_500),
      bill(2, 'Saltgrass', 59_500, 67_500),
      bill(3, 'Saltgrass', 64_500, 72_000),
    ];
    expect(feeScore(cases).score?.venues[0]).toMatchObject({ mean: 7833, range: { low: 7116, high: 8550 } });
  });

  test('hold fees to the cent, and name the venue that billed otherwise', () => {
    const cases = [
      bill(1, 'Saltgrass', 42_400, 42_400),
      bill(2, 'Saltgrass', 40_000, 40_000),
      bill(3, 'Foxglove', 30_000, 32_500),
    ];
    expect(feeScore(cases).score).toMatchObject({
      expected: 112_400,
      actual: 114_900,
      same: 2,
      venues: [
        { venue: 'Foxglove', cars: 1, off: 1, over: 2500, mean: 2500, range: null },
        { venue: 'Saltgrass', cars: 2, off: 0, over: 0, mean: 0, range: { low: 0, high: 0 } },
      ],
    });
    expect(feeScore([])).toMatchObject({ missing: 1, score: null });
  });
});

describe('the trend of prices', () => {
  const random = chances(8);
  const noise = () => random() + random() + random() + random() - 2;
  const lots = (aWeek: number, perWeek = 8, weeks = 8): PriceCase[] =>
    Array.from({ length: perWeek * weeks }, (_, i) => {
      const days = Math.floor((i * 7) / perWeek);
      return {
        lot: `${1000 + i}`,
        date: daysAgo(days),
        expected: 2_000_000,
        price: 1_300_000 * Math.exp(0.06 * noise() - (aWeek * days) / 7),
      };
    });

  test('that fall by 3% a week for four weeks are pointed out, with about how much', () => {
    expect(priceTrend(lots(-0.03), { today: TODAY })).toMatchObject({ direction: 'falling', cases: 32 });
    expect(priceTrend(lots(-0.03), { today: TODAY })?.change).toBeCloseTo(Math.expm1(-0.12), 1);
    expect(priceTrend(lots(0.03), { today: TODAY })?.direction).toBe('rising');
  });

  test('that only scatter are not, in at least 95 of 100 logs', () => {
    const found = Array.from({ length: 100 }, () => priceTrend(lots(0), { today: TODAY })).filter(
      (trend) => trend !== null,
    );
    expect(found.length).toBeLessThanOrEqual(5);
  });

  test('say nothing with too few prices, or with prices of two weeks only', () => {
    expect(priceTrend(lots(-0.05, 2), { today: TODAY })).toBeNull();
    expect(priceTrend(lots(-0.05, 12, 2), { today: TODAY })).toBeNull();
    expect(priceTrend([], { today: TODAY })).toBeNull();
  });
});
