import { lnNormalCdf as exact, normalPdf } from '../statistics/normal.ts';

/** A closing asks for thousands of these, so they are looked up: cubics between points this far apart are good to 1e-11. */
const STEP = 1 / 64;
const REACH = 12;
const LAST = 2 * REACH * 64;
const known: { table?: Float64Array } = {};

/** Values and slopes at every point, in turn. */
function table(): Float64Array {
  known.table ??= Float64Array.from({ length: 2 * (LAST + 1) }, (_, i) => {
    const x = (i >> 1) * STEP - REACH;
    const value = exact(x);
    return i % 2 === 0 ? value : normalPdf(x) / Math.exp(value);
  });
  return known.table;
}

/** Natural logarithm of the chance that a standard normal value is below `x`. */
export function lnNormalCdf(x: number): number {
  if (!(x > -REACH && x < REACH)) return exact(x);
  const points = table();
  const at = (x + REACH) / STEP;
  const i = Math.min(LAST - 1, Math.floor(at));
  const t = at - i;
  const low = points[2 * i] as number;
  const high = points[2 * i + 2] as number;
  const lowSlope = (points[2 * i + 1] as number) * STEP;
  const highSlope = (points[2 * i + 3] as number) * STEP;
  // Hermite's cubic.
  const rise = high - low;
  return low + t * (lowSlope + t * (3 * rise - 2 * lowSlope - highSlope + t * (lowSlope + highSlope - 2 * rise)));
}
