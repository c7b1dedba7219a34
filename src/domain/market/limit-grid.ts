import { normalCdf } from '../statistics/normal.ts';
import { lnNormalCdf } from './ln-normal-cdf.ts';
import type { Reading } from './reading.ts';

/**
 * Serious rivals, the seller's reserve among them. Fixed: simulated markets with 2 to 15 rivals are as well described by
 * five as by a number that is estimated.
 */
export const RIVALS = 5;
/** Φ⁻¹(½^(1/5)): how far above the rivals' mean the median of the strongest of five lies, in standard deviations. */
export const TOP_MEDIAN = 1.1289975353;

/** Step of the grid, in logarithms of the price: a little over 1%. */
export const STEP = 0.8 / 60;
/** Medians of the strongest rival's limit reach so many steps to each side of our own zero-profit hammer: 80%. */
export const MEDIANS = 60;
/** Weekend levels reach so many steps to each side: 27%. */
export const LEVELS = 20;
/** Medians as a weekend may shift them, to each side. */
export const SHIFTED = MEDIANS + LEVELS;
export const SPREADS = 26;
/** Rows of a table: a shifted median each, `SPREADS` numbers long. */
export const ROWS = 2 * SHIFTED + 1;

/** The spreads of one rival's limit that are thought possible, from 3% to 40%, evenly apart in logarithms. */
export const SPREAD: Float64Array = Float64Array.from(
  { length: SPREADS },
  (_, i) => 0.03 * (0.4 / 0.03) ** (i / (SPREADS - 1)),
);

/** Log-likelihood of readings for every median and spread: `[(median + SHIFTED) × SPREADS + spread]`. */
export type LogTable = Float64Array;

export const emptyTable = (): LogTable => new Float64Array(ROWS * SPREADS);

/**
 * Adds what a reading says. Rivals' limits are five independent normal logarithms with median `m` of the highest and spread
 * `s`; the rows are the densities and chances of their order statistics (David & Nagaraja, Order Statistics, 2.1 and 2.2).
 * @param weight what it counts for, 0 to 1: the likelihood to that power
 */
export function addReading(table: LogTable, { says, x }: Reading, weight = 1): void {
  for (let spread = 0; spread < SPREADS; spread++) {
    const s = SPREAD[spread] as number;
    const lnS = Math.log(s);
    for (let row = 0; row < ROWS; row++) {
      const z = (x - (row - SHIFTED) * STEP) / s + TOP_MEDIAN;
      const at = row * SPREADS + spread;
      table[at] = (table[at] as number) + weight * logLikelihood(says, z, lnS);
    }
  }
}

/** Logarithm of the likelihood at `z` standard deviations above the rivals' mean. */
export function logLikelihood(says: Reading['says'], z: number, lnS: number): number {
  switch (says) {
    case 'strongest-at':
      return Math.log(RIVALS) + lnDensity(z) + (RIVALS - 1) * lnNormalCdf(z) - lnS;
    case 'strongest-below':
      return RIVALS * lnNormalCdf(z);
    case 'second-at':
      return Math.log(RIVALS * (RIVALS - 1)) + lnDensity(z) + (RIVALS - 2) * lnNormalCdf(z) + lnNormalCdf(-z) - lnS;
    case 'between':
      return Math.log(RIVALS) + (RIVALS - 1) * lnNormalCdf(z) + lnNormalCdf(-z);
    case 'strongest-above':
      return lnSomeAbove(z);
  }
}

const lnDensity = (z: number): number => -0.5 * z * z - 0.5 * Math.log(2 * Math.PI);

/** ln(1 − Φ⁵). Far up, where Φ⁵ is 1 to the last digit, five times the tail is as near. */
function lnSomeAbove(z: number): number {
  if (z > 6) return Math.log(RIVALS) + lnNormalCdf(-z);
  return Math.log(-Math.expm1(RIVALS * lnNormalCdf(z)));
}

/** Half steps from a price to a median that {@link topBelow} is tabled for, to each side. */
const REACH = 2 * SHIFTED + 190;
const table: { value?: Float64Array } = {};

/**
 * Chance that the strongest rival's limit is below a price, `[(half steps from the median to the price + REACH) × SPREADS +
 * spread]`. The same for every group, so it is worked out once.
 */
export function topBelow(): { readonly reach: number; readonly chance: Float64Array } {
  table.value ??= Float64Array.from({ length: (2 * REACH + 1) * SPREADS }, (_, i) => {
    const half = Math.floor(i / SPREADS) - REACH;
    return normalCdf((half * STEP) / 2 / (SPREAD[i % SPREADS] as number) + TOP_MEDIAN) ** RIVALS;
  });
  return { reach: REACH, chance: table.value };
}
