import { normalQuantile } from '../../statistics/normal.ts';

/** A share with a range that holds the true one in 19 of 20 such cases. */
export interface Share {
  /** 0 to 1. */
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

const Z = normalQuantile(0.975);

/**
 * A share of cases and its range by the score interval without continuity correction (Wilson 1927; method 3 of Newcombe
 * 1998), which holds what it says also for few cases and for shares near 0 and 1.
 * @param hits 0 to `cases`; not whole where older cases count for less
 * @param cases above 0
 * @param z how many standard errors to either side
 */
export function wilson(hits: number, cases: number, z: number = Z): Share {
  const share = hits / cases;
  const scale = 1 + z ** 2 / cases;
  const middle = (share + z ** 2 / (2 * cases)) / scale;
  const reach = (z / scale) * Math.sqrt((share * (1 - share)) / cases + z ** 2 / (4 * cases ** 2));
  return { share, low: Math.max(0, middle - reach), high: Math.min(1, middle + reach) };
}
