import fc from 'fast-check';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Bidding } from '../../../src/domain/plan/stage.ts';
import type { PlanMeans } from '../../../src/domain/plan/worked-plan.ts';

/** A price point in whole dollars: what it costs, what it earns, and how likely it is to be paid. */
export interface Point {
  readonly cash: number;
  readonly profit: number;
  readonly chance: number;
  /** The other way to pay. */
  readonly floored?: { readonly cash: number; readonly line: number; readonly profit: number };
}

/** A lot of price points; the prices are their numbers. */
export function biddingOf(points: readonly Point[], more: Partial<Bidding> = {}): Bidding {
  const cash = {
    cash: Float64Array.from(points, (point) => point.cash * 100),
    line: new Float64Array(points.length),
    profit: Float64Array.from(points, (point) => point.profit * 100),
  };
  const line = {
    cash: Float64Array.from(points, ({ floored }) => (floored?.cash ?? 0) * 100),
    line: Float64Array.from(points, ({ floored }) => (floored?.line ?? 0) * 100),
    profit: Float64Array.from(points, ({ floored }) => (floored?.profit ?? 0) * 100),
  };
  const rising = (of: (point: Point) => number) =>
    points.every((point, i) => i === 0 || of(point) >= of(points[i - 1] as Point));
  return {
    points: {
      prices: points.map((_, i) => cents((i + 1) * 100)),
      chance: Float64Array.from(points, ({ chance }) => chance),
      ways: points.some(({ floored }) => floored) ? [cash, line] : [cash],
      falling: rising(({ cash }) => cash) && rising(({ profit }) => -profit) && !points.some(({ floored }) => floored),
    },
    rule: 'best',
    bound: -1,
    ...more,
  };
}

export function meansOf(cash: number, more: Partial<PlanMeans> = {}): PlanMeans {
  return { path: [{ at: 0 as never, cents: cash * 100 }], line: 0, places: null, freed: [], keptDollar: 0, ...more };
}

/** Lots of up to four price points, their chances adding up to at most 1. */
export const anyPoints = (most = 4): fc.Arbitrary<readonly Point[]> =>
  fc
    .array(
      fc.record({
        cash: fc.integer({ min: 1, max: 9 }),
        profit: fc.integer({ min: 0, max: 9 }),
        chance: fc.integer({ min: 0, max: 5 }),
      }),
      {
        minLength: 1,
        maxLength: most,
      },
    )
    .map((points) => {
      const costs = points.map(({ cash }) => cash).sort((a, b) => a - b);
      const profits = points.map(({ profit }) => profit).sort((a, b) => b - a);
      return points.map(({ chance }, i) => ({ cash: costs[i] ?? 1, profit: profits[i] ?? 0, chance: chance / 20 }));
    });
