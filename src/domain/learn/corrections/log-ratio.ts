import { tQuantile } from '../../statistics/student-t.ts';
import { type Learned, learned } from './learned.ts';

/** One amount that was expected and what it came to, as a natural logarithm of the ratio. */
export interface Ratio {
  /** ln(actual ÷ expected). */
  readonly log: number;
  /** What it counts for, above 0 and at most 1. */
  readonly weight: number;
}

/** What is believed before any case: no error on average, single cases so far apart, counting for so many cases. */
export interface RatioBelief {
  /** Standard deviation of one logarithm. */
  readonly spread: number;
  /** How many cases "right on average" counts for. */
  readonly cases: number;
  /** How many cases `spread` counts for. */
  readonly freedom: number;
}

/**
 * How many times the expected amount the actual one is on average: the mean of a lognormal ratio, because a bid rests on
 * means. Normal-inverse-gamma posterior of the logarithms (Gelman et al., Bayesian Data Analysis, 3rd ed., 3.3), with the
 * belief anchored so that without a case the ratio is exactly 1. Its range is Cox's (Land 1972; Zhou & Gao 1997), with
 * Student's t. Without end it goes to the maximum-likelihood estimate exp(mean + variance ÷ 2).
 */
export function ratioLearned(ratios: readonly Ratio[], belief: RatioBelief, looks = 1): Learned {
  const { mean, variance, weight, total, freedom } = posterior(ratios, belief);
  const log = mean + variance / 2;
  const error = Math.sqrt(variance / total + variance ** 2 / (2 * freedom));
  return learned(
    Math.exp(log),
    1,
    (chance) => {
      const reach = tQuantile((1 + chance) / 2, freedom) * error;
      return [Math.exp(log - reach), Math.exp(log + reach)];
    },
    { cases: ratios.length, weight, priorShare: belief.cases / total },
    looks,
  );
}

/** The posterior of the logarithms themselves: their mean and variance, and what these rest on. */
export function posterior(ratios: readonly Ratio[], belief: RatioBelief) {
  const prior = -(belief.spread ** 2) / 2;
  const sum = (of: (one: Ratio) => number) => ratios.reduce((so, one) => so + one.weight * of(one), 0);
  const weight = sum(() => 1);
  const average = weight === 0 ? prior : sum(({ log }) => log) / weight;
  const total = belief.cases + weight;
  const freedom = belief.freedom + weight;
  const squares =
    belief.freedom * belief.spread ** 2 +
    sum(({ log }) => (log - average) ** 2) +
    ((belief.cases * weight) / total) * (average - prior) ** 2;
  return {
    mean: (belief.cases * prior + weight * average) / total,
    variance: squares / freedom,
    weight,
    total,
    freedom,
  };
}
