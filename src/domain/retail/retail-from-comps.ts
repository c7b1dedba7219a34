import { type Cents, roundedCents } from '../money/cents.ts';
import type { Estimate } from '../money/estimate.ts';
import { PPM } from '../money/rate.ts';
import { normalQuantile } from '../statistics/normal.ts';
import { tQuantile } from '../statistics/student-t.ts';
import { type AdjustedComp, adjustedComp, counts, type Subject } from './adjusted-comp.ts';
import type { Comp } from './comp.ts';
import type { Estimation } from './estimation.ts';
import { guessSpread } from './guess.ts';

/** What the comparables and the buyer's own guess together say this lot will retail for. */
export interface RetailFromComps {
  /** The figure in the middle; the bid takes it as the mean. */
  readonly middle: Cents;
  /** One in ten sell below. */
  readonly low: Cents;
  /** One in ten sell above. */
  readonly high: Cents;
  /** Standard deviation of the log price that gives the same one-in-ten range. */
  readonly sigma: number;
  /** How many comparables the guess counts for; 0 without a guess. */
  readonly guessCounts: number;
  /** Comparables that were counted. */
  readonly counted: number;
  /** How far one car sells from another of its kind, after these comparables: a standard deviation of log prices. */
  readonly carSpread: number;
  /** Degrees of freedom of the t distribution of the log price, and its scale. */
  readonly freedom: number;
  readonly scale: number;
  /** Every comparable, those left out too, in the order given. */
  readonly comps: readonly AdjustedComp[];
}

/**
 * The adjustment grid: every comparable is brought to this lot step by step, the guess counts as so many comparables
 * more as its range is narrow, and the average of their logarithms is the middle. The spread is that of Student's t
 * (normal-inverse-gamma posterior; Gelman et al., Bayesian Data Analysis, 3rd ed., 3.3), with an extra for leaning on
 * slopes that are themselves uncertain. It works from one comparable or a guess alone, and does not change its method.
 * @returns undefined with neither a guess nor a counted comparable
 */
export function retailFromComps(input: {
  readonly guess?: Estimate | undefined;
  readonly comps: readonly Comp[];
  readonly subject: Subject;
  readonly settings: Estimation;
}): RetailFromComps | undefined {
  const { guess, subject, settings } = input;
  const comps = input.comps.map((comp) => adjustedComp(comp, subject, settings));
  const posterior = posteriorOf(guess, comps.filter(counts), settings);
  if (posterior === undefined) return undefined;
  const { mean, scale, freedom } = posterior;
  const reach = tQuantile(0.9, freedom) * scale;
  return {
    middle: dollarsOf(mean),
    low: dollarsOf(mean - reach),
    high: dollarsOf(mean + reach),
    sigma: reach / normalQuantile(0.9),
    guessCounts: posterior.guessCounts,
    counted: posterior.counted,
    carSpread: posterior.carSpread,
    freedom,
    scale,
    comps,
  };
}

/** A log price in cents turned back into money. */
const dollarsOf = (log: number): Cents => roundedCents(Math.exp(log));

/** The t distribution of the log price, in cents, of one more car like the lot. */
export interface LogPrice {
  readonly mean: number;
  readonly scale: number;
  readonly freedom: number;
  readonly guessCounts: number;
  readonly counted: number;
  readonly carSpread: number;
}

/** @returns undefined with neither a guess nor a comparable */
export function posteriorOf(
  guess: Estimate | undefined,
  comps: readonly AdjustedComp[],
  settings: Estimation,
): LogPrice | undefined {
  const n = comps.length;
  const priorSpread = settings.carSpreadPpm / PPM;
  const guessCounts = guess === undefined ? 0 : (priorSpread / guessSpread(guess, settings)) ** 2;
  const weight = guessCounts + n;
  if (weight === 0) return undefined;
  const guessed = guess === undefined ? 0 : Math.log(Math.max(1, guess.likely));
  const logs = comps.map(({ log }) => log);
  const average = n === 0 ? guessed : sum(logs) / n;
  const freedom = settings.carSpreadWeight + n;
  const squares =
    settings.carSpreadWeight * priorSpread ** 2 +
    sum(logs.map((log) => (log - average) ** 2)) +
    ((guessCounts * n) / weight) * (average - guessed) ** 2;
  const carSpread = Math.sqrt(squares / freedom);
  const share = n / weight;
  const slopes = share ** 2 * slopeVariance(comps, settings);
  return {
    mean: (guessCounts * guessed + n * average) / weight,
    scale: Math.sqrt(carSpread ** 2 * (1 + 1 / weight) + slopes),
    freedom,
    guessCounts,
    counted: n,
    carSpread,
  };
}

/** What uncertain slopes, and an uncertain step from asking to selling, add to the variance of the comparables' average. */
function slopeVariance(comps: readonly AdjustedComp[], settings: Estimation): number {
  if (comps.length === 0) return 0;
  const mean = (of: (comp: AdjustedComp) => number) => sum(comps.map(of)) / comps.length;
  const miles = mean((comp) => comp.moreMiles) * (settings.milesSlopeDoubtPpm / PPM);
  const years = mean((comp) => comp.yearsOlder) * (settings.yearSlopeDoubtPpm / PPM);
  const asking = mean(({ comp }) => (comp.kind === 'asking' ? 1 : 0)) * (settings.askingRatioDoubtPpm / PPM);
  return miles ** 2 + years ** 2 + asking ** 2;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
