import { type Cents, cents, LARGEST_CENTS, ZERO } from '../money/cents.ts';
import { type Factor, factor } from '../money/rate.ts';
import type { Carrying } from './carrying-rules.ts';
import { type StockCar, type Survival, statedBelief, survivalOf } from './days-to-sell.ts';
import { holdDays } from './hold-day.ts';

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
  const usual = survivalOf(statedBelief(carrying.daysToSell, history));
  return { survives: (day) => usual(day / stretch), horizon: carrying.horizonDays };
}

/**
 * The same for any spread of days: a sum over the days 0 to `horizon` − 1, each weighted with the chance that the car
 * is still there at its start.
 * @param survives the chance of being unsold at the start of a day, 1 at day 0
 * @param horizon whole days, 0 or more
 */
export function holdFactorsFor(
  carrying: Carrying,
  survives: Survival,
  horizon: number,
  funding: 'floor' | 'cash' = carrying.floorPlan ? 'floor' : 'cash',
): HoldFactors {
  const costOf = holdDays(carrying);
  let days = 0;
  let floor = 0;
  let cash = 0;
  for (let day = 0; day < horizon; day++) {
    const chance = survives(day);
    const cost = costOf(day);
    days += chance;
    floor += chance * cost.floor;
    cash += chance * cost.cash;
  }
  return {
    // Past a hundred times the money no car is worth buying anyway.
    floorFactor: factor(Math.min(100, floor)),
    cashFactor: factor(Math.min(100, cash)),
    flatHold: cents(Math.min(LARGEST_CENTS, Math.round(days * carrying.lotCentsPerDay) + unitFee(carrying, funding))),
    expectedDays: days,
  };
}

/** What the lender charges for putting one car on the line; nothing for a car that is paid from own cash. */
export function unitFee({ floorPlan }: Carrying, funding: 'floor' | 'cash'): Cents {
  return funding === 'floor' && floorPlan ? floorPlan.unitFeeCents : ZERO;
}
