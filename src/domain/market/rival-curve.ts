import { SHIFTED, SPREADS, STEP, topBelow } from './limit-grid.ts';

/** Half steps of the curve to each side of our zero-profit hammer. */
const HALVES = 180;

/** How high the strongest rival goes: a rising curve over the logarithm of price ÷ our zero-profit hammer. */
export interface RivalCurve {
  /** Chance that the strongest rival's limit is at or below `x`; never falls as `x` rises. */
  readonly below: (x: number) => number;
}

/**
 * The curve that a belief predicts: over every median and spread, the chance that the highest of five limits is below.
 * @param belief over shifted medians and spreads, adding up to 1
 */
export function rivalCurve(belief: Float64Array): RivalCurve {
  const { reach, chance } = topBelow();
  const values = new Float64Array(2 * HALVES + 1);
  for (let row = 0; row * SPREADS < belief.length; row++) {
    const weights = belief.subarray(row * SPREADS, (row + 1) * SPREADS);
    if (!weights.some((weight) => weight > 1e-13)) continue;
    for (let i = 0; i < values.length; i++) {
      const from = (i - HALVES - 2 * (row - SHIFTED) + reach) * SPREADS;
      let sum = 0;
      for (let spread = 0; spread < SPREADS; spread++) {
        sum += (weights[spread] as number) * (chance[from + spread] as number);
      }
      values[i] = (values[i] as number) + sum;
    }
  }
  return { below: (x) => between(values, (x / STEP) * 2 + HALVES) };
}

/** A value between two of the curve: the cubic through four points, held between its neighbors so that it never falls. */
function between(values: Float64Array, at: number): number {
  const last = values.length - 1;
  if (!(at > 0)) return values[0] as number;
  if (at >= last) return values[last] as number;
  const i = Math.floor(at);
  const t = at - i;
  const low = values[i] as number;
  const high = values[i + 1] as number;
  const before = values[Math.max(0, i - 1)] as number;
  const after = values[Math.min(last, i + 2)] as number;
  const cubic =
    low +
    0.5 * t * (high - before + t * (2 * before - 5 * low + 4 * high - after + t * (3 * (low - high) + after - before)));
  return Math.min(high, Math.max(low, cubic));
}
