import { lnGamma } from '../statistics/gamma.ts';

/**
 * How long one car has been watched on the lot, in days since it arrived.
 * `enteredAt` is its age when the record began (0 when it was recorded from its first day): a car that was already old
 * when the tool was first used must not count as if its early days had been seen.
 */
export interface StockCar {
  /** 0 or more, and less than `days`. */
  readonly enteredAt: number;
  /** Age when it sold, or its age now when it has not. */
  readonly days: number;
  readonly sold: boolean;
}

/** The chance that a car is still unsold `day` days after it arrived: 1 at day 0, never rising. */
export type Survival = (day: number) => number;

/**
 * Shape of the spread of days to sell. Above 1: a car is a little likelier to sell on any one day the longer it has
 * stood, because its price comes down. An assumption of this tool, not a published figure.
 */
export const DAYS_SHAPE = 1.25;

/** How many past cars the owner's own median counts for. Chosen by simulation: never far from the best at any length of history. */
export const PRIOR_CARS = 2;

/**
 * What is believed about days to sell: the rate of a Weibull with fixed shape has a gamma distribution with `cars` and
 * `weight` as its two parameters (Weibull hazard θ·t^shape, gamma conjugate).
 */
export interface DaysBelief {
  readonly shape: number;
  /** The gamma's shape: prior cars plus cars sold. */
  readonly cars: number;
  /** The gamma's rate: exposure in days^shape. */
  readonly weight: number;
}

/**
 * The owner's median, corrected by what the stock did. An unsold car adds to the exposure and to nothing else, which
 * is all that censoring takes; averaging only the cars that sold would come out far too short.
 * @param medianDays half of the cars sell within this many days; above 0
 */
export function daysBelief(
  medianDays: number,
  history: readonly StockCar[] = [],
  { shape = DAYS_SHAPE, priorCars = PRIOR_CARS }: { readonly shape?: number; readonly priorCars?: number } = {},
): DaysBelief {
  let cars = priorCars;
  let weight = medianDays ** shape / (2 ** (1 / priorCars) - 1);
  for (const car of history) {
    // A car sold on the day it came has still stood for part of a day.
    const days = Math.max(car.days, car.enteredAt, 1);
    weight += days ** shape - Math.min(car.enteredAt, days) ** shape;
    if (car.sold) cars += 1;
  }
  return { shape, cars, weight };
}

/** The belief behind the setup's days: the owner's median and his record, or what was learned from both and more. */
export function statedBelief(
  { days, countsFor }: { readonly days: number; readonly countsFor?: number | undefined },
  history: readonly StockCar[],
): DaysBelief {
  return countsFor === undefined ? daysBelief(days, history) : daysBelief(days, [], { priorCars: countsFor });
}

/** The chance that the next car is unsold after `day` days, the doubt about the rate included. */
export function survivalOf(belief: DaysBelief): Survival {
  return (day) => (belief.weight / (belief.weight + Math.max(day, 0) ** belief.shape)) ** belief.cars;
}

/** The day by which half of the cars are sold. */
export function medianDays(belief: DaysBelief): number {
  return (belief.weight * (2 ** (1 / belief.cars) - 1)) ** (1 / belief.shape);
}

/**
 * The average number of days, with no horizon: b^(1/k)·Γ(1+1/k)·Γ(a−1/k)/Γ(a). It counts the few that would stand
 * for years, so what a car is expected to cost is summed up to the horizon instead.
 */
export function meanDays({ shape, cars, weight }: DaysBelief): number {
  const power = 1 / shape;
  return weight ** power * Math.exp(lnGamma(1 + power) + lnGamma(cars - power) - lnGamma(cars));
}
