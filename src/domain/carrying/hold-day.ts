import { PPM } from '../money/rate.ts';
import type { Carrying, FloorPlan } from './carrying-rules.ts';

/** What one day of holding costs for each dollar put in at the purchase. */
export interface HoldDay {
  /** Per dollar advanced: interest on what is still owed, and the price of the own cash that has taken over the rest. */
  readonly floor: number;
  /** Per dollar of own cash, by 365ths of its yearly price. */
  readonly cash: number;
}

/**
 * The cost of each day, counted from 0. A curtailment is paid at the start of its day.
 * @returns floor is 0 throughout when there is no floor plan
 */
export function holdDays({ floorPlan, cashAnnualRatePpm }: Carrying): (day: number) => HoldDay {
  const cash = cashAnnualRatePpm / PPM / 365;
  if (floorPlan === undefined) return () => ({ floor: 0, cash });
  const interest = dailyRate(floorPlan);
  return (day) => {
    const owed = stillAdvanced(floorPlan, day);
    return { floor: owed * interest + (1 - owed) * cash, cash };
  };
}

/** Share of the original advance that is still owed on `day`. */
function stillAdvanced(floorPlan: FloorPlan, day: number): number {
  let share = PPM;
  for (const curtailment of floorPlan.curtailments) if (curtailment.day <= day) share -= curtailment.sharePpm;
  return share / PPM;
}

/** Interest of an average day. Under every rule but actual/360 a whole year costs one year's interest, however its days are counted. */
function dailyRate({ annualRatePpm, dayCount }: FloorPlan): number {
  return annualRatePpm / PPM / (dayCount === 'actual/360' ? 360 : 365);
}
