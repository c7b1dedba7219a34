import { type Cents, cents, ZERO } from '../money/cents.ts';
import { type Factor, factor, PPM } from '../money/rate.ts';
import type { Carrying, FloorPlan } from '../setup/carrying.ts';
import { daysBelief, type StockCar, type Survival, survivalOf } from './days-to-sell.ts';

/**
 * Expected holding cost, collapsed: `floorFactor × advance + cashFactor × own cash + flatHold`. It is linear in the
 * money tied up, so two factors carry all of it, whatever the hammer price turns out to be.
 */
export interface HoldFactors {
  /**
   * Per dollar advanced at the purchase: the lender's interest, and the price of the own cash that takes over what
   * curtailments pay back. 0 without a floor plan.
   */
  readonly floorFactor: Factor;
  /** Per dollar of own cash put in at the purchase. */
  readonly cashFactor: Factor;
  /** Place on the lot for the expected days, and the lender's fee for each car when it is floored. */
  readonly flatHold: Cents;
  /** Expected days until it is sold, or wholesaled at the horizon. */
  readonly expectedDays: number;
}

export interface HoldOptions {
  /** The dealer's own cars, sold and unsold; refines a median, and is ignored beside a fixed number of days. */
  readonly history?: readonly StockCar[];
  /** Whether this car is floored; by default whenever there is a floor plan. Only the unit fee depends on it. */
  readonly funding?: 'floor' | 'cash';
  /** How much longer than usual it will take (1.2 is a fifth longer), for cars of which the lot is full. */
  readonly stretch?: number;
}

/** Expected cost of holding a car, from the dealer's own terms and history. */
export function holdFactors(carrying: Carrying, options: HoldOptions = {}): HoldFactors {
  const { survives, horizon } = sellingPath(carrying, options);
  return holdFactorsFor(carrying, survives, horizon, options.funding);
}

/** The chance of being unsold on each day, and the day at which holding ends for certain. */
export function sellingPath(
  carrying: Carrying,
  { history = [], stretch = 1 }: HoldOptions = {},
): { readonly survives: Survival; readonly horizon: number } {
  if (carrying.daysToSell.kind === 'fixed') {
    return { survives: () => 1, horizon: Math.round(carrying.daysToSell.days * stretch) };
  }
  const usual = survivalOf(daysBelief(carrying.daysToSell.days, history));
  return { survives: (day) => usual(day / stretch), horizon: carrying.horizonDays };
}

/**
 * The same for any spread of days: a sum over the days 0 to `horizon` − 1, each weighted with the chance that the car
 * is still there at its start. Own cash is charged by 365ths of its yearly price.
 * @param survives the chance of being unsold at the start of a day, 1 at day 0
 * @param horizon whole days, 0 or more
 */
export function holdFactorsFor(
  carrying: Carrying,
  survives: Survival,
  horizon: number,
  funding: 'floor' | 'cash' = carrying.floorPlan ? 'floor' : 'cash',
): HoldFactors {
  const { floorPlan } = carrying;
  let days = 0;
  let borrowedDays = 0;
  for (let day = 0; day < horizon; day++) {
    const chance = survives(day);
    days += chance;
    if (floorPlan) borrowedDays += (chance * stillAdvanced(floorPlan, day)) / PPM;
  }
  const cashPerDay = carrying.cashAnnualRatePpm / PPM / 365;
  const lot = Math.round(days * carrying.lotCentsPerDay);
  const unitFee = funding === 'floor' ? (floorPlan?.unitFeeCents ?? ZERO) : ZERO;
  return {
    floorFactor: factor(floorPlan ? borrowedDays * dailyRate(floorPlan) + (days - borrowedDays) * cashPerDay : 0),
    cashFactor: factor(days * cashPerDay),
    flatHold: cents(lot + unitFee),
    expectedDays: days,
  };
}

/** Share of the original advance, ppm, that is still owed on `day`: a curtailment is paid at the start of its day. */
function stillAdvanced(floorPlan: FloorPlan, day: number): number {
  let share = PPM;
  for (const curtailment of floorPlan.curtailments) if (curtailment.day <= day) share -= curtailment.sharePpm;
  return share;
}

/** Interest of an average day. Under every rule but actual/360 a whole year costs one year's interest, however its days are counted. */
function dailyRate({ annualRatePpm, dayCount }: FloorPlan): number {
  return annualRatePpm / PPM / (dayCount === 'actual/360' ? 360 : 365);
}
