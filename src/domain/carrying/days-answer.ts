import type { Carrying } from './carrying-rules.ts';
import { medianDays, type StockCar, type Survival, statedBelief, survivalOf } from './days-to-sell.ts';
import { FEWEST_SALES_TO_SHOW, kaplanMeier, type SurvivalStep } from './kaplan-meier.ts';

/** How long a car is expected to stand, in the form that a person reads. */
export interface DaysAnswer {
  /** Half of the cars sell within so many days. */
  readonly median: number;
  readonly survives: Survival;
  /** What his own cars did, once enough of them have sold; else empty. */
  readonly steps: readonly SurvivalStep[];
  readonly sold: number;
  readonly unsold: number;
}

/**
 * The answer behind the holding cost, for cars that take `stretch` times as long as usual.
 * @returns undefined where a fixed number of days is set: then there is no spread to speak of
 */
export function daysAnswer(carrying: Carrying, history: readonly StockCar[], stretch = 1): DaysAnswer | undefined {
  if (carrying.daysToSell.kind === 'fixed') return undefined;
  const belief = statedBelief(carrying.daysToSell, history);
  const usual = survivalOf(belief);
  const sold = history.filter((car) => car.sold).length;
  return {
    median: medianDays(belief) * stretch,
    survives: (day) => usual(day / stretch),
    steps: sold >= FEWEST_SALES_TO_SHOW ? kaplanMeier(history) : [],
    sold,
    unsold: history.length - sold,
  };
}
