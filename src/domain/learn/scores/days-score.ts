import type { StockCar, Survival } from '../../carrying/days-to-sell.ts';
import { kaplanMeier, medianOf, type SurvivalStep } from '../../carrying/kaplan-meier.ts';
import { gammaQuantile } from '../../statistics/incomplete-gamma.ts';
import { type Case, inCaseOrder, type Looking, type Scored, scored, weightedSum, weightOn } from './scored.ts';

/**
 * A car that was bought, sold or still standing. Its date is that of the purchase: were older cars forgotten by the day on which
 * they sold, cars that stand would count for more than the same cars once they have sold, and every lot would look slow.
 */
export interface DaysCase extends Case {
  /** Days until it sold, or until today. */
  readonly days: number;
  readonly sold: boolean;
  readonly survives: Survival;
  /** Half of such cars were to be sold within so many days. */
  readonly median: number;
}

export interface DaysScore {
  readonly sold: number;
  readonly unsold: number;
  /** Days by which half were to be sold, on average over the forecasts. */
  readonly forecast: number;
  /** Days by which half were sold, unsold cars counted; undefined while more than half stand. */
  readonly actual: number | undefined;
  /**
   * How many times as quickly as forecast they sell, with a range that holds the truth in 19 of 20 cases: sales over those
   * that the forecasts make of the days that every car stood, sold or not. Null where a fixed number of days was set,
   * which leaves no chance to hold a car against.
   */
  readonly pace: { readonly value: number; readonly low: number; readonly high: number } | null;
  /** The share still unsold by day, unsold cars counted. */
  readonly steps: readonly SurvivalStep[];
}

/** Fewer sales than this make a picture that says more than is known. */
export const LEAST_SOLD = 8;

/** How good the forecasts of days to sell were. The least number is of cars that sold; cars that stand count in the score. */
export function daysScore(cases: readonly DaysCase[], looking: Looking): Scored<DaysScore> {
  const own = inCaseOrder(cases);
  const sold = own.filter((one) => one.sold);
  return scored(sold, LEAST_SOLD, () => scoreOf(own, sold, looking));
}

function scoreOf(cases: readonly DaysCase[], sold: readonly DaysCase[], looking: Looking): DaysScore {
  const weightOf = weightOn(looking);
  const cars = cases.map(({ days, sold: went }): StockCar => ({ enteredAt: 0, days: Math.max(1, days), sold: went }));
  const steps = kaplanMeier(cars);
  return {
    sold: sold.length,
    unsold: cases.length - sold.length,
    forecast: weightedSum(cases, weightOf, ({ median }) => median) / weightedSum(cases, weightOf, () => 1),
    actual: medianOf(steps),
    pace: paceOf(cases, weightOf),
    steps,
  };
}

/**
 * Sales over expected sales. What a forecast makes of a car is −ln of the chance that it still stands after its days (Cox
 * & Snell 1968); added up over all cars, sold or not, that is the number of sales to expect, and the sales are spread about
 * it like counts (the standardized ratio of Breslow & Day 1987, with the exact range by gamma quantiles).
 */
function paceOf(cases: readonly DaysCase[], weightOf: (one: DaysCase) => number): DaysScore['pace'] {
  const expected = weightedSum(cases, weightOf, ({ days, survives }) => -Math.log(survives(Math.max(1, days))));
  if (!Number.isFinite(expected) || expected <= 0) return null;
  const sales = weightedSum(cases, weightOf, ({ sold }) => (sold ? 1 : 0));
  return {
    value: sales / expected,
    low: sales === 0 ? 0 : gammaQuantile(0.025, sales) / expected,
    high: gammaQuantile(0.975, sales + 1) / expected,
  };
}
