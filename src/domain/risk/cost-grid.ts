import { lnGamma } from '../statistics/gamma.ts';
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
  /** Takes off what the car is worth, and ties up no money: what a false statement costs. Recon is paid, and waits. */
  readonly doubt?: boolean;
}

/** The spread of a sum of costs on a grid: `weights[k]` is the chance of `k × step`. */
export interface CostGrid {
  readonly step: number;
  readonly weights: Float64Array;
}

/** Mean of a PERT cost, times its chance: (low + 4·likely + high) ÷ 6. */
export const expectedCost = ({ low, likely, high, chance }: UncertainCost): number =>
  (chance * (low + 4 * likely + high)) / 6;

/**
 * Spread of the sum of independent costs, each put on the grid so that its mean stays exact whatever the step (with
 * L(x) = E[min(X, x)]: w₀ = 1 − L(h)/h, wₖ = (2L(kh) − L((k−1)h) − L((k+1)h))/h; Gerber 1982, Klugman, Panjer &
 * Willmot, Loss Models), then convolved. Only the variance grows a little, by less than step²/4 for each cost. What rises
 * with the cost still does on the grid: one more cost, or a dearer one, never makes the sum look cheaper.
 * @param step above 0, in the costs' unit
 */
export function costGrid(costs: readonly UncertainCost[], step: number): CostGrid {
  let weights = Float64Array.of(1);
  for (const cost of costs) weights = convolve(weights, onGrid(cost, step));
  return { step, weights };
}

/**
 * A step that is doubled until it fits, so that one more cost or one more dollar of retail seldom changes it.
 * @param finest the step to start from
 * @param fits whether a step is coarse enough
 */
export function doubledUntil(finest: number, fits: (step: number) => boolean): number {
  let step = finest;
  while (!fits(step)) step *= 2;
  return step;
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

/**
 * L(x) = E[min(X, x)] of the cost when it is incurred, in closed form; I_u(a+1, b) = I_u(a, b) − u^a (1−u)^b ÷ (a·B(a, b))
 * (DLMF 8.17.20).
 */
function limitedMean({ low, likely, high }: UncertainCost): (x: number) => number {
  const width = high - low;
  if (width <= 0) return (x) => Math.min(low, x);
  const a = 1 + (4 * (likely - low)) / width;
  const b = 1 + (4 * (high - likely)) / width;
  const scale = Math.exp(lnGamma(a + b) - lnGamma(a) - lnGamma(b)) / a;
  return (x) => {
    if (x <= low) return x;
    const u = Math.min(1, (x - low) / width);
    const below = incompleteBeta(u, a, b);
    const mean = (a / (a + b)) * (below - scale * u ** a * (1 - u) ** b);
    return low + width * (mean + u * (1 - below));
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
