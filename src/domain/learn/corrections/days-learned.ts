import { type DaysBelief, daysBelief, medianDays, type StockCar } from '../../carrying/days-to-sell.ts';
import { gammaQuantile } from '../../statistics/incomplete-gamma.ts';
import type { Instant } from '../../time/instant.ts';
import { DAY } from '../../time/units.ts';
import { HALF_LIFE_DAYS } from './forgetting.ts';
import { type Learned, learned } from './learned.ts';

/** A car that was bought, as far as it is known when. */
export interface Bought {
  /** When it came, and when that was known. */
  readonly from: Instant;
  readonly at: Instant;
  /** When it went, and when that was known; absent while it stands. */
  readonly sold?: { readonly on: Instant; readonly at: Instant };
  /** When it was known that its purchase was canceled: from then on it tells nothing. */
  readonly canceledAt?: Instant;
}

/** Half sell within so many days, with the belief that this is the median of. */
export interface DaysLearned extends Learned {
  /** How many cars sold the belief counts for, the owner's own median included. */
  readonly countsFor: number;
  /** The median without the cars that were bought here. */
  readonly neutral: number;
}

/** What the owner says, and what his stock record shows up to its day. */
export interface OwnDays {
  readonly medianDays: number;
  readonly record: readonly StockCar[];
  /** The day of the record; a car that came before it is in it, and counts from then on only. */
  readonly recordedAt?: Instant;
}

/**
 * Days to sell from the cars that were bought here: the rate of a Weibull of fixed shape has a gamma distribution, to which
 * each sale adds one car and each car, sold or not, its days. A car that stands now adds to the days alone, so that slow
 * sellers are not left out. A car ages from the day it came: from the day it sold, a car that stands would count for more
 * than its fellows that went, and 48 days came out of simulated stores where 40 were true.
 */
export function daysLearned(
  bought: readonly Bought[],
  own: OwnDays,
  now: Instant,
  halfLifeDays: number = HALF_LIFE_DAYS,
): DaysLearned {
  const before = daysBelief(own.medianDays, own.record);
  let { cars, weight: exposure } = before;
  let sold = 0;
  for (const car of bought) {
    const seen = seenUntil(car, own.recordedAt, now);
    if (seen === undefined) continue;
    const counts = 2 ** (-Math.max(0, now - car.from) / (halfLifeDays * DAY));
    const { cars: one, weight } = daysBelief(1, [seen], { priorCars: 1 });
    // Less the belief that the single car was added to: of a median of one day that counts for one car.
    cars += counts * (one - 1);
    exposure += counts * (weight - 1);
    if (seen.sold) sold += 1;
  }
  const belief: DaysBelief = { ...before, cars, weight: exposure };
  const median = medianDays(belief);
  return {
    ...learned(
      median,
      medianDays(before),
      (chance) => {
        // The median of a known rate θ is (ln 2 ÷ θ)^(1 ÷ shape); a high rate is a short one.
        const at = (p: number) => ((Math.LN2 * exposure) / gammaQuantile(p, cars)) ** (1 / belief.shape);
        return [at((1 + chance) / 2), at((1 - chance) / 2)];
      },
      { cases: sold, weight: cars - before.cars, priorShare: before.cars / cars },
    ),
    countsFor: cars,
    neutral: medianDays(before),
  };
}

/** The car as far as it was known at `now`; undefined where that is nothing, or all of it is in the stock record. */
function seenUntil(car: Bought, recordedAt: Instant | undefined, now: Instant): StockCar | undefined {
  if (car.at > now || car.from > now || (car.canceledAt ?? Number.POSITIVE_INFINITY) <= now) return undefined;
  const known = car.sold !== undefined && car.sold.at <= now && car.sold.on <= now ? car.sold.on : undefined;
  const days = Math.max(0, (known ?? now) - car.from) / DAY;
  const enteredAt = recordedAt === undefined ? 0 : Math.max(0, recordedAt - car.from) / DAY;
  if (enteredAt > 0 && enteredAt >= days) return undefined;
  return { enteredAt, days, sold: known !== undefined };
}
