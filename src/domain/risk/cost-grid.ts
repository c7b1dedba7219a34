import { incompleteBeta } from '../statistics/incomplete-beta.ts';

/**
 * A cost that may or may not come, and that may be higher than likely: PERT between `low` and `high`, incurred
 * with the given chance. Any one unit of money; low ≤ likely ≤ high, 0 or more.
 */
export interface UncertainCost {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** 0 to 1. */
  readonly chance: number;
}

/** The spread of a sum of costs on a grid: `weights[k]` is the chance of `k × step`. */
export interface CostGrid {
  readonly step: number;
  readonly weights: Float64Array;
  /** Exact mean of the sum; the grid has the same one. */
  readonly mean: number;
}

/** Mean of a PERT cost, times its chance: (low + 4·likely + high) ÷ 6. */
export const expectedCost = ({ low, likely, high, chance }: UncertainCost): number =>
  (chance * (low + 4 * likely + high)) / 6;

/**
 * Spread of the sum of independent costs, each put on the grid so that its mean stays exact whatever the step (with
 * L(x) = E[min(X, x)]: w₀ = 1 − L(h)/h, wₖ = (2L(kh) − L((k−1)h) − L((k+1)h))/h; Gerber 1982, Klugman, Panjer &
 * Willmot, Loss Models), then convolved. Only the variance grows a little, by less than step²/4 for each cost.
 * @param step above 0, in the costs' unit
 */
export function costGrid(costs: readonly UncertainCost[], step: number): CostGrid {
  let weights = Float64Array.of(1);
  let mean = 0;
  for (const cost of costs) {
    weights = convolve(weights, onGrid(cost, step));
    mean += expectedCost(cost);
  }
  return { step, weights, mean };
}

/** A step that keeps the grid at some sixty cells, never finer than `finest`: with more, no chance changes by 1 in 10,000. */
export function gridStep(costs: readonly UncertainCost[], finest: number): number {
  const most = costs.reduce((sum, cost) => sum + cost.high, 0);
  return Math.max(finest, Math.ceil(most / 64 / finest) * finest);
}

function onGrid(cost: UncertainCost, step: number): Float64Array {
  const limited = limitedMean(cost);
  const cells = Math.ceil(cost.high / step) + 1;
  const weights = new Float64Array(cells);
  let before = 0;
  let here = 0;
  for (let k = 0; k < cells; k++) {
    const next = limited((k + 1) * step);
    const weight = k === 0 ? 1 - next / step : (2 * here - before - next) / step;
    // Rounding errors of the difference must not become negative chances.
    weights[k] = cost.chance * Math.max(0, weight);
    before = here;
    here = next;
  }
  weights[0] = (weights[0] ?? 0) + 1 - cost.chance;
  return weights;
}

/** L(x) = E[min(X, x)] of the cost when it is incurred, in closed form. */
function limitedMean({ low, likely, high }: UncertainCost): (x: number) => number {
  const width = high - low;
  if (width <= 0) return (x) => Math.min(low, x);
  const a = 1 + (4 * (likely - low)) / width;
  const b = 1 + (4 * (high - likely)) / width;
  return (x) => {
    if (x <= low) return x;
    const u = Math.min(1, (x - low) / width);
    return low + width * ((a / (a + b)) * incompleteBeta(u, a + 1, b) + u * (1 - incompleteBeta(u, a, b)));
  };
}

function convolve(one: Float64Array, other: Float64Array): Float64Array<ArrayBuffer> {
  const sum = new Float64Array(one.length + other.length - 1);
  other.forEach((weight, j) => {
    // Below this a cell adds nothing that shows in a chance.
    if (weight < 1e-14) return;
    for (let i = 0; i < one.length; i++) sum[i + j] = (sum[i + j] ?? 0) + (one[i] ?? 0) * weight;
  });
  return sum;
}
