import { type Cents, cents } from '../money/cents.ts';
import { PPM } from '../money/rate.ts';
import { rateOf } from '../money/rounding.ts';
import type { LocalDate } from '../time/local-date.ts';
import type { FloorPlan } from './carrying-rules.ts';
import { addDays, daysBetween, yearShare } from './day-count.ts';

/** A stretch of time during which the same amount was owed. */
export interface OwedStretch {
  readonly from: LocalDate;
  /** The day on which it ended; not counted. */
  readonly to: LocalDate;
  readonly days: number;
  readonly owed: Cents;
}

export interface FloorPlanInterest {
  /** Rounded half up to the cent once, at the end: rounding each day or stretch would drift. */
  readonly interest: Cents;
  readonly stretches: readonly OwedStretch[];
  /** What is still owed at the end, before it is paid off. */
  readonly stillOwed: Cents;
}

/**
 * Simple interest on one car from the day of its advance to the day it is paid off, each curtailment paid at the start
 * of its day. The lender's own statement decides; this is what it should come to.
 * @param to not before `from`
 */
export function floorPlanInterest(advance: Cents, plan: FloorPlan, from: LocalDate, to: LocalDate): FloorPlanInterest {
  const stretches: OwedStretch[] = [];
  let owed: number = advance;
  let start = from;
  // Cents times the numerators of the year shares: exact, because one rule has one denominator.
  let weighted = 0n;
  let denominator = 1;
  const run = (end: LocalDate) => {
    const share = yearShare(plan.dayCount, start, end, to);
    stretches.push({ from: start, to: end, days: share.days, owed: cents(owed) });
    weighted += BigInt(owed) * BigInt(share.numerator);
    denominator = share.denominator;
    start = end;
  };
  for (const curtailment of plan.curtailments) {
    if (curtailment.day > daysBetween(from, to)) break;
    run(addDays(from, curtailment.day));
    owed -= rateOf(advance, curtailment.sharePpm);
  }
  run(to);
  const divisor = BigInt(denominator) * BigInt(PPM);
  const interest = (2n * weighted * BigInt(plan.annualRatePpm) + divisor) / (2n * divisor);
  return { interest: cents(Number(interest)), stretches, stillOwed: cents(owed) };
}
