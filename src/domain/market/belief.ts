import { emptyTable, LEVELS, type LogTable, MEDIANS, ROWS, SHIFTED, SPREAD, SPREADS, STEP } from './limit-grid.ts';

/** A belief over medians and spreads, laid out like a {@link LogTable}; adds up to 1. Nothing lies beyond the medians' reach. */
export type Belief = Float64Array;

/** What is thought of a group before any of its own closings. */
export interface Prior {
  /** Median of the strongest rival's limit, as a logarithm against our zero-profit hammer. */
  readonly median: number;
  readonly medianSd: number;
  /** Of the logarithm of one rival's spread. */
  readonly lnSpread: number;
  readonly lnSpreadSd: number;
}

/** The strongest rival stops about where we would earn nothing, give or take 10%; one rival differs from another by about 12%. */
export const STARTING_PRIOR: Prior = { median: 0, medianSd: 0.1, lnSpread: Math.log(0.12), lnSpreadSd: 0.5 };

/** How much groups differ from one another. */
const GROUP_SD = 0.06;
const GROUP_LN_SPREAD_SD = 0.2;

/** The belief after readings; exactly the prior after none. */
export function beliefAfter(prior: Prior, readings: LogTable): Belief {
  const logs = emptyTable().fill(Number.NEGATIVE_INFINITY);
  for (let row = LEVELS; row < ROWS - LEVELS; row++) {
    const median = ((row - SHIFTED) * STEP - prior.median) / prior.medianSd;
    for (let spread = 0; spread < SPREADS; spread++) {
      const lnSpread = (Math.log(SPREAD[spread] as number) - prior.lnSpread) / prior.lnSpreadSd;
      const at = row * SPREADS + spread;
      logs[at] = (readings[at] as number) - 0.5 * (median * median + lnSpread * lnSpread);
    }
  }
  return normalized(logs);
}

/** Logarithms to chances that add up to 1. */
export function normalized(logs: Float64Array): Float64Array {
  const most = logs.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const chances = logs.map((value) => Math.exp(value - most));
  const sum = chances.reduce((a, b) => a + b, 0);
  return chances.map((value) => value / sum);
}

export interface Moments {
  readonly median: number;
  readonly medianVar: number;
  readonly spread: number;
  readonly lnSpread: number;
  readonly lnSpreadVar: number;
}

export function momentsOf(belief: Belief): Moments {
  const sums = { median: 0, square: 0, spread: 0, ln: 0, lnSquare: 0 };
  for (let at = 0; at < belief.length; at++) {
    const weight = belief[at] as number;
    if (weight === 0) continue;
    const median = (Math.floor(at / SPREADS) - SHIFTED) * STEP;
    const spread = SPREAD[at % SPREADS] as number;
    const ln = Math.log(spread);
    sums.median += weight * median;
    sums.square += weight * median * median;
    sums.spread += weight * spread;
    sums.ln += weight * ln;
    sums.lnSquare += weight * ln * ln;
  }
  return {
    median: sums.median,
    medianVar: Math.max(0, sums.square - sums.median ** 2),
    spread: sums.spread,
    lnSpread: sums.ln,
    lnSpreadVar: Math.max(0, sums.lnSquare - sums.ln ** 2),
  };
}

/**
 * What other groups' closings let one expect of a group: their common belief, widened by how much groups differ. It leaves the
 * group's own closings out, or they would count twice.
 */
export function priorFrom(starting: Prior, others: LogTable | undefined): Prior {
  if (others === undefined) return starting;
  const { median, medianVar, lnSpread, lnSpreadVar } = momentsOf(beliefAfter(starting, others));
  return {
    median: Math.max(-MEDIANS * STEP, Math.min(MEDIANS * STEP, median)),
    medianSd: Math.sqrt(medianVar + GROUP_SD ** 2),
    lnSpread,
    lnSpreadSd: Math.sqrt(lnSpreadVar + GROUP_LN_SPREAD_SD ** 2),
  };
}
