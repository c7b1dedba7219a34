import { describe, expect, test } from 'vitest';
import { costGrid, expectedCost, type UncertainCost } from '../../src/domain/risk/cost-grid.ts';
import { costTail } from '../../src/domain/risk/cost-tail.ts';
import {
  chanceOfProfitBelow,
  expectedProfit,
  expectedShortfall,
  type Outcomes,
  worstCases,
} from '../../src/domain/risk/profit-spread.ts';
import { lnGamma } from '../../src/domain/statistics/gamma.ts';
import { chanceBelow, shortfallBelow } from '../../src/domain/statistics/lognormal.ts';

const pert = (low: number, likely: number, high: number, chance = 1): UncertainCost => ({ low, likely, high, chance });

// In dollars. Everything here was computed independently; the last row of the table also by a simulation of four million paths.
const RECON = [pert(200, 400, 1500), pert(0, 150, 600), pert(300, 500, 2500, 0.15)];
const RETAIL = { mean: 18_000 * Math.exp(0.08 ** 2 / 2), sigma: 0.08 };

/** Weeks of a Weibull with shape 1.3 and mean 45 days, at their middles; whatever is left, at 126. */
function weeks(): { day: number; weight: number }[] {
  const scale = 45 / Math.exp(lnGamma(1 + 1 / 1.3));
  const left = (day: number) => Math.exp(-((day / scale) ** 1.3));
  const list = Array.from({ length: 18 }, (_, i) => ({ day: 7 * i + 3.5, weight: left(7 * i) - left(7 * i + 7) }));
  return [...list, { day: 126, weight: left(126) }];
}

/** Cases of a list of costs on a grid of so many dollars, none of it counted beforehand. */
function spreadOn(costs: readonly UncertainCost[], step: number): Outcomes['costs'] {
  const chances = [...costGrid(costs, step).weights];
  return {
    chances,
    recon: chances.map((_, k) => k * step),
    doubt: chances.map(() => 0),
    doubts: [{ cents: 0, chance: 1 }],
    reconAbove: costTail(costs),
  };
}

function cases(price: number, step: number): Outcomes {
  const allIn = price + 850 + (price >= 10_000 ? 100 : 0);
  const sold = weeks().map(({ day, weight }) => {
    const hold = (0.1 * day) / 365;
    return {
      weight: 0.97 * weight,
      gain: 0.8 * Math.exp(-0.0005 * day),
      base: 200 + 300 + allIn * (1 + hold),
      times: 1 + hold,
    };
  });
  return { sold, costs: spreadOn(RECON, step), undone: { weight: 0.03, cost: 900 } };
}

describe('the spread of profit (computed independently)', () => {
  test.each([
    [50, 0.040046, 1005.54, 66.83],
    [25, 0.040029, 1005.97, 67.25],
    [10, 0.040024, 1006.09, 67.36],
  ])('on a grid of $%d loses with chance %d and has the known worst tenth', (step, loss, begin, average) => {
    const all = cases(9000, step);
    expect(chanceOfProfitBelow(0, all, RETAIL)).toBeCloseTo(loss, 6);
    expect(expectedProfit(all, RETAIL)).toBeCloseTo(2672.299, 3);
    const worst = worstCases(0.1, all, RETAIL, 1e-4);
    expect(worst.begin).toBeCloseTo(begin, 2);
    expect(worst.average).toBeCloseTo(average, 2);
  });

  test('on no grid moves the mean of recon, 870', () => {
    expect(RECON.reduce((sum, cost) => sum + expectedCost(cost), 0)).toBeCloseTo(870, 10);
    for (const step of [10, 25, 50, 333]) {
      const grid = costGrid(RECON, step);
      expect(grid.weights.reduce((sum, weight, k) => sum + weight * k * step, 0)).toBeCloseTo(870, 7);
      expect(grid.weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    }
  });

  test('has a recon spread of about 398.4 on a fine grid', () => {
    const { weights } = costGrid(RECON, 1);
    const variance = weights.reduce((sum, weight, k) => sum + weight * (k - 870) ** 2, 0);
    expect(Math.sqrt(variance)).toBeCloseTo(398.4, 1);
  });
});

describe('where each rule stops, by how far retail may be off (computed independently)', () => {
  // Here the median of retail is held at 18,000, so that a wider spread raises the mean; the tool itself holds the mean.
  const stop = (sigma: number, accepts: (all: Outcomes, retail: typeof RETAIL) => boolean): number => {
    const retail = { mean: 18_000 * Math.exp(sigma ** 2 / 2), sigma };
    let [low, high] = [0, 16_000 / 25];
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (accepts(cases(middle * 25, 25), retail)) low = middle;
      else high = middle;
    }
    return low * 25;
  };
  test.each([
    [0.05, 11_575, 10_050, 10_325, 10_800, 11_125, 10_925],
    [0.08, 11_600, 10_075, 9975, 10_500, 10_900, 10_375],
    [0.12, 11_675, 10_150, 9325, 10_050, 10_600, 9700],
  ])('with a spread of %d', (sigma, even, least, tenth, fifth, third, worst) => {
    const loses = (most: number) => stop(sigma, (all, retail) => chanceOfProfitBelow(0, all, retail) <= most);
    expect(stop(sigma, (all, retail) => expectedProfit(all, retail) >= 0)).toBe(even);
    expect(stop(sigma, (all, retail) => expectedProfit(all, retail) >= 1500)).toBe(least);
    expect([loses(0.1), loses(0.2), loses(0.3)]).toEqual([tenth, fifth, third]);
    expect(stop(sigma, (all, retail) => worstCases(0.1, all, retail, 0.01).average >= -1000)).toBe(worst);
  });
});

/** Sold for certain, at no cost. */
const SOLD: Outcomes = {
  sold: [{ weight: 1, gain: 1, base: 0, times: 1 }],
  costs: spreadOn([], 1),
  undone: { weight: 0, cost: 0 },
};

describe('a lognormal retail price', () => {
  test('with mean 18,000 and spread 8% has the known lowest tenth (computed independently)', () => {
    const retail = { mean: 18_000, sigma: 0.08 };
    expect(chanceBelow(retail, 16_194.1106)).toBeCloseTo(0.1, 8);
    expect(shortfallBelow(retail, 17_000)).toBeCloseTo(195.00322, 5);
    const worst = worstCases(0.1, SOLD, retail, 1e-6);
    expect(worst.begin).toBeCloseTo(16_194.1106, 4);
    expect(worst.average).toBeCloseTo(15_600.5505, 4);
  });

  test('under a cap never pays more than the cap', () => {
    const one = SOLD;
    const retail = { mean: 18_000, sigma: 0.08, cap: 17_000 };
    expect(expectedProfit(one, retail)).toBeCloseTo(17_000 - 195.00322, 5);
    expect(chanceOfProfitBelow(17_000, one, retail)).toBeLessThan(1);
    expect(chanceOfProfitBelow(17_000.01, one, retail)).toBe(1);
    expect(expectedShortfall(17_500, one, retail)).toBeCloseTo(500 + 195.00322, 5);
  });
});

test('a PERT cost from 200 over 400 to 1,500 has mean 550, spread 217.94495 and 860.50844 at one in ten above (computed independently)', () => {
  const { weights } = costGrid([pert(200, 400, 1500)], 0.5);
  const mean = weights.reduce((sum, weight, k) => sum + (weight * k) / 2, 0);
  const variance = weights.reduce((sum, weight, k) => sum + weight * (k / 2 - mean) ** 2, 0);
  expect(mean).toBeCloseTo(550, 7);
  expect(Math.sqrt(variance)).toBeCloseTo(217.94495, 3);
  let share = 0;
  const at = weights.findIndex((weight) => {
    share += weight;
    return share >= 0.9;
  });
  expect(at / 2).toBeCloseTo(860.50844, -0.5);
});
