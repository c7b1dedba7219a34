import { gammaQuantile } from '../../statistics/incomplete-gamma.ts';
import type { Instant } from '../../time/instant.ts';
import { type Known, type Weighted, weighted } from './forgetting.ts';
import { type Learned, learned } from './learned.ts';
import { posterior, type RatioBelief, ratioLearned } from './log-ratio.ts';

/** A car that has sold, beside what was expected of it. Amounts of the same kind, both above 0. */
export interface RetailOutcome extends Known {
  /** Expected retail, the title discount taken off. */
  readonly expected: number;
  readonly actual: number;
  /** Standard deviation of the log price, as the forecast had it; above 0. */
  readonly sigma: number;
}

/** An assumption of this tool: single cars end 8% from the forecast, and "right on average" counts for five of them. */
export const RETAIL_BELIEF: RatioBelief = { spread: 0.08, cases: 5, freedom: 6 };

/** How many times the expected price the cars bring, on average. */
export function retailLevel(outcomes: readonly RetailOutcome[], now: Instant, halfLifeDays?: number): Learned {
  return ratioLearned(ratiosOf(weighted(outcomes, now, halfLifeDays)), RETAIL_BELIEF);
}

/**
 * How many times as wide as forecast the prices really lie around their own average: root mean square of the errors in
 * forecast standard deviations, with 1 counting for so many cars. Scaled inverse chi-square posterior (Gelman et al.,
 * Bayesian Data Analysis, 3rd ed., 2.6).
 */
export function retailSpread(outcomes: readonly RetailOutcome[], now: Instant, halfLifeDays?: number): Learned {
  const cases = weighted(outcomes, now, halfLifeDays);
  const level = posterior(ratiosOf(cases), RETAIL_BELIEF).mean;
  const weight = cases.reduce((sum, one) => sum + one.weight, 0);
  const squares = cases.reduce(
    (sum, { one, weight: w }) => sum + w * ((Math.log(one.actual / one.expected) - level) / one.sigma) ** 2,
    RETAIL_BELIEF.freedom,
  );
  // The level was taken from the same cars, which costs one of them.
  const freedom = RETAIL_BELIEF.freedom + Math.max(0, weight - weight / (RETAIL_BELIEF.cases + weight));
  return learned(
    Math.sqrt(squares / freedom),
    1,
    (chance) => {
      const at = (p: number) => Math.sqrt(squares / 2 / gammaQuantile(p, freedom / 2));
      return [at((1 + chance) / 2), at((1 - chance) / 2)];
    },
    { cases: cases.length, weight, priorShare: RETAIL_BELIEF.freedom / freedom },
  );
}

const ratiosOf = (cases: readonly Weighted<RetailOutcome>[]) =>
  cases.map(({ one, weight }) => ({ log: Math.log(one.actual / one.expected), weight }));
