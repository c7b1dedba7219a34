import type { Carrying } from './carrying-rules.ts';
import { holdDays } from './hold-day.ts';
import { type HoldOptions, sellingPath, unitFee } from './hold-factors.ts';

/** One stretch of time in which the car may sell, and what holding it until then costs on average. */
export interface HoldCase {
  readonly chance: number;
  /** Per dollar advanced at the purchase. */
  readonly floor: number;
  /** Per dollar of own cash put in at the purchase. */
  readonly cash: number;
  /** Cents, whatever the price: place on the lot, and the lender's fee for the car when it is floored. */
  readonly flat: number;
}

/** Days of one stretch. Within a fortnight holding varies by some tens of dollars, which does not show beside retail. */
export const FORTNIGHT = 14;

/**
 * The same holding cost as `holdFactors`, not on average but by fortnights: a sale on day d pays for the days 0 to d, a
 * car that is left at the horizon for all of them. Each fortnight keeps its own mean, so that the whole spread has exactly
 * the mean that the two factors round.
 * @param stretchDays days of one case, 1 or more
 */
export function holdSpread(
  carrying: Carrying,
  options: HoldOptions = {},
  stretchDays = FORTNIGHT,
): readonly HoldCase[] {
  const { survives, horizon } = sellingPath(carrying, options);
  const fee = unitFee(carrying, options.funding ?? (carrying.floorPlan ? 'floor' : 'cash'));
  const costOf = holdDays(carrying);
  const cases: HoldCase[] = [];
  let now = { chance: 0, floor: 0, cash: 0, days: 0 };
  let floor = 0;
  let cash = 0;
  const add = (chance: number, days: number) => {
    now.chance += chance;
    now.floor += chance * floor;
    now.cash += chance * cash;
    now.days += chance * days;
  };
  const close = () => {
    if (now.chance > 0) {
      const flat = fee + (now.days / now.chance) * carrying.lotCentsPerDay;
      cases.push({ chance: now.chance, floor: now.floor / now.chance, cash: now.cash / now.chance, flat });
    }
    now = { chance: 0, floor: 0, cash: 0, days: 0 };
  };
  for (let day = 0; day < horizon; day++) {
    const cost = costOf(day);
    floor += cost.floor;
    cash += cost.cash;
    add(survives(day) - (day + 1 < horizon ? survives(day + 1) : 0), day + 1);
    if (day % stretchDays === stretchDays - 1) close();
  }
  if (horizon === 0) add(1, 0);
  close();
  return cases;
}
