import { normalQuantile } from '../statistics/normal.ts';
import type { StockCar } from './days-to-sell.ts';

/** Fewer sales than this make a picture that says more than is known. */
export const FEWEST_SALES_TO_SHOW = 8;

/** One step of the curve: what the share of unsold cars falls to on `day`. */
export interface SurvivalStep {
  readonly day: number;
  /** Cars that were watched and unsold just before. */
  readonly atRisk: number;
  readonly sold: number;
  /** Share still unsold after this day. */
  readonly unsold: number;
  /** Greenwood's standard error of `unsold`. */
  readonly standardError: number;
  /** A 95% interval, symmetric in log(−log), so that it stays between 0 and 1. */
  readonly low: number;
  readonly high: number;
}

/**
 * The share of cars still unsold, day by day, with nothing assumed about its form (Kaplan & Meier 1958). A car that is
 * unsold at an age was at risk at that age; one that was already old when the record began joins at its age of then.
 */
export function kaplanMeier(cars: readonly StockCar[]): readonly SurvivalStep[] {
  const days = [...new Set(cars.filter((car) => car.sold).map((car) => car.days))].sort((a, b) => a - b);
  const z = normalQuantile(0.975);
  let unsold = 1;
  let greenwood = 0;
  return days.map((day) => {
    const atRisk = cars.filter((car) => car.enteredAt < day && day <= car.days).length;
    const sold = cars.filter((car) => car.sold && car.days === day).length;
    unsold *= 1 - sold / atRisk;
    if (unsold === 0) return { day, atRisk, sold, unsold, standardError: 0, low: 0, high: 0 };
    greenwood += sold / (atRisk * (atRisk - sold));
    const root = Math.sqrt(greenwood);
    const reach = Math.exp((z * root) / Math.log(unsold));
    return {
      day,
      atRisk,
      sold,
      unsold,
      standardError: unsold * root,
      low: unsold ** (1 / reach),
      high: unsold ** reach,
    };
  });
}

/** The first day by which at least half were sold, if it came to that. */
export function medianOf(steps: readonly SurvivalStep[]): number | undefined {
  return steps.find((step) => step.unsold <= 0.5)?.day;
}

/** Average days until sold or until `until`, whichever comes first: the area under the curve up to there. */
export function restrictedMean(steps: readonly SurvivalStep[], until: number): number {
  let area = 0;
  let from = 0;
  let unsold = 1;
  for (const step of steps) {
    if (step.day >= until) break;
    area += unsold * (step.day - from);
    from = step.day;
    unsold = step.unsold;
  }
  return area + unsold * (until - from);
}
