import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planCeiling, planValue, workPlan } from '../../../src/domain/plan/worked-plan.ts';
import { anyPoints, biddingOf, meansOf, type Point } from './worlds.ts';

/** The best that lots one after the other can earn, by trying every bid at every state; nothing assumed of the shape. */
function bruteForce(lots: readonly (readonly Point[])[], cash: number, places: number): number {
  const [first, ...later] = lots;
  if (first === undefined) return 0;
  const lost = bruteForce(later, cash, places);
  let best = lost;
  for (let bid = 0; bid < first.length; bid++) {
    const payable = first.slice(0, bid + 1);
    if (places < 1 || payable.some((point) => point.cash > cash)) break;
    let value = 0;
    let left = 1;
    for (const { cash: cost, profit, chance } of payable) {
      value += chance * (profit + bruteForce(later, cash - cost, places - 1));
      left -= chance;
    }
    best = Math.max(best, value + left * lost);
  }
  return best;
}

/** One after the other, a minute apart. */
const oneByOne = (lots: readonly (readonly Point[])[]) =>
  lots.map((points, i) => ({ at: i, lots: [biddingOf(points)] }));
const worlds = fc.record({
  lots: fc.array(anyPoints(), { minLength: 1, maxLength: 4 }),
  cash: fc.integer({ min: 0, max: 25 }),
  places: fc.integer({ min: 0, max: 4 }),
});

describe('the plan', () => {
  test('stops at $6 on the first lot of two, where the cash is worth more on the second', () => {
    const first = [
      { cash: 6, profit: 5, chance: 0.3 },
      { cash: 7, profit: 3, chance: 0.3 },
    ];
    const batches = oneByOne([first, [{ cash: 6, profit: 8, chance: 0.5 }]]);
    const plan = workPlan(batches, meansOf(10, { places: 2 }));
    expect(plan.value).toBeCloseTo(430, 9);
    expect(plan.bids.map(([bid]) => bid?.at)).toEqual([0, 0]);
    // One step more takes $7, and the $10 left over would have been worth $4 of them.
    expect(plan.bids[0]?.[0]?.against).toEqual({ is: 'worth', tied: 700, worth: 400 });
    const atMax = batches.map(({ at, lots }) => ({ at, lots: lots.map((lot) => ({ ...lot, rule: 'max' as const })) }));
    expect(planValue(atMax, meansOf(10, { places: 2 }))).toBeCloseTo(400, 9);
  });

  test('earns what trying every bid at every state earns', () => {
    fc.assert(
      fc.property(worlds, ({ lots, cash, places }) => {
        const value = planValue(oneByOne(lots), meansOf(cash, { places }));
        expect(value / 100).toBeCloseTo(bruteForce(lots, cash, places), 9);
      }),
      { numRuns: 200 },
    );
  });

  test('bids so that the purse never runs out, and bids what earns that value', () => {
    fc.assert(
      fc.property(worlds, ({ lots, cash, places }) => {
        const { bids, value } = workPlan(oneByOne(lots), meansOf(cash, { places }));
        const at = bids[0]?.[0]?.at ?? -1;
        const [first = [], ...later] = lots;
        const payable = first.slice(0, at + 1);
        expect(payable.every((point) => point.cash <= cash)).toBe(true);
        if (places === 0) expect(at).toBe(-1);
        const lost = bruteForce(later, cash, places);
        const won = payable.reduce(
          (sum, point) => sum + point.chance * (point.profit + bruteForce(later, cash - point.cash, places - 1) - lost),
          0,
        );
        expect(lost + won).toBeCloseTo(value / 100, 9);
      }),
      { numRuns: 200 },
    );
  });

  test('earns no less with more cash or more places, and says by how much one more place does', () => {
    fc.assert(
      fc.property(worlds, ({ lots, cash, places }) => {
        const valueWith = (more: number, room: number) =>
          planValue(oneByOne(lots), meansOf(cash + more, { places: places + room }));
        const value = valueWith(0, 0);
        expect(valueWith(1, 0)).toBeGreaterThanOrEqual(value - 1e-9);
        const { worths } = workPlan(oneByOne(lots), meansOf(cash, { places }));
        expect(worths.place).toBeCloseTo(valueWith(0, 1) - value, 6);
        expect(worths.thousand).toBeCloseTo(valueWith(1_000, 0) - value, 6);
      }),
      { numRuns: 100 },
    );
  });

  test('lies between its bounds when money is counted in cells', () => {
    // Amounts of odd cents, so that no cell divides them all.
    const lot = (i: number): Point[] =>
      [0, 1, 2, 3].map((j) => ({
        cash: 4_000.37 + 211.13 * i + 150.01 * j,
        profit: 1_900 - 133 * j - (i % 5) * 90,
        chance: 0.06 + 0.01 * (i % 3),
      }));
    const batches = oneByOne(Array.from({ length: 30 }, (_, i) => lot(i)));
    const exact = planValue(batches, meansOf(23_456.78, { places: 4 }));
    const coarse = planValue(batches, meansOf(23_456.78, { places: 4 }), 400);
    const ceiling = planCeiling(batches, meansOf(23_456.78, { places: 4 }), 400);
    expect(coarse).toBeLessThanOrEqual(exact);
    expect(ceiling).toBeGreaterThanOrEqual(exact);
    expect((ceiling - coarse) / exact).toBeLessThan(0.1);
  });
});

describe('published values', () => {
  test('Moser’s recursion: the best of n uniform offers, one of which is taken (1956; Gilbert & Mosteller 1966, section 5)', () => {
    // E₁ = 1/2, Eₙ₊₁ = (1 + Eₙ²) / 2. An offer of u is a lot of value 1 at the price 1 − u.
    const steps = 24 * 40;
    const uniform: Point[] = Array.from({ length: steps }, (_, j) => ({
      cash: 1,
      profit: 100 * (1 - (j + 0.5) / steps),
      chance: 1 / steps,
    }));
    let expected = 0.5;
    for (let n = 1; n <= 10; n++) {
      const value = planValue(oneByOne(Array.from({ length: n }, () => uniform)), meansOf(1, { places: 1 }));
      // 24 groups of equal chance in place of all prices.
      expect(value / 10_000).toBeCloseTo(expected, 2);
      expected = (1 + expected ** 2) / 2;
    }
  });

  test('Kleywegt & Papastavrou’s closed form for equal sizes and exponential rewards (1998): V = ln Σ (λT)ʲ / j!', () => {
    const steps = 400;
    const lambda = 10;
    // Rewards above a threshold: exponential with mean 1, by its quantiles; scaled to $1,000.
    const points: Point[] = Array.from({ length: 24 }, (_, j) => {
      // The mean between two quantiles, so that the mean of all is 1.
      const [low, high] = [j / 24, (j + 1) / 24];
      const part = (p: number) => (p === 0 ? 0 : p - p * Math.log(p));
      return { cash: 1, profit: (1_000 * (part(high) - part(low))) / (high - low), chance: lambda / steps / 24 };
    });
    const batches = oneByOne(Array.from({ length: steps }, () => points));
    const closed = [2.3979, 4.11087, 5.42788, 6.46822, 7.29822];
    closed.forEach((expected, i) => {
      const value = planValue(batches, meansOf(i + 1)) / 100_000;
      expect(Math.abs(value - expected)).toBeLessThan(0.03);
    });
  });
});
