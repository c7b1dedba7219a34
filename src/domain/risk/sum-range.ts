import { costGrid, doubledUntil, type UncertainCost } from './cost-grid.ts';

/** What a sum of uncertain costs is seldom below and seldom above: one in ten on either side. */
export interface SumRange {
  readonly low: number;
  readonly high: number;
}

/** Cents; a spread is told in whole dollars. */
const FINEST = 500;
const MOST_CELLS = 1024;

/**
 * The range of what independent costs come to together, which is narrower than their ranges added up.
 * @returns amounts in the unit of the costs, 0 or more, low ≤ high; both on a grid of at most 1,024 steps
 */
export function sumRange(costs: readonly UncertainCost[]): SumRange {
  const most = costs.reduce((sum, { high }) => sum + high, 0);
  const { step, weights } = costGrid(
    costs,
    doubledUntil(FINEST, (h) => h * MOST_CELLS >= most),
  );
  const at = (share: number): number => {
    let reached = 0;
    const cell = weights.findIndex((weight) => {
      reached += weight;
      // The weights sum to 1 but for rounding.
      return reached >= share - 1e-9;
    });
    return Math.min(most, Math.max(0, cell) * step);
  };
  return { low: at(0.1), high: at(0.9) };
}
