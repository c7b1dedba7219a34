import type { LotId } from '../../lot/lot.ts';
import { type Cents, cents, sumCents, ZERO } from '../../money/cents.ts';
import { addDays } from '../../time/calendar-day.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { lastDayOf, type Month, monthOf, nextMonth } from '../month.ts';
import type { ClosedMonth } from './post-months.ts';

/** What a month's end counts as owed for a won car, because its bill is not there yet. */
export interface CarAccrual {
  /** The last day of a month. */
  readonly on: LocalDate;
  readonly hammer: Cents;
  readonly fees: Cents;
  /** The day on which price and fees no longer count as not billed, and why. */
  readonly back?: { readonly on: LocalDate; readonly why: 'billed' | 'canceled' } | undefined;
  /** The day of a bill for fees alone that came before the price was billed; it takes back the fees' part. */
  readonly feesBackOn?: LocalDate | undefined;
}

/** A car, as far as its accrual goes. */
export interface AccruedCar {
  readonly lot: LotId;
  readonly won: { readonly hammer: Cents; readonly date: LocalDate } | null;
  /** As expected at the win. */
  readonly expected: { readonly lines: readonly { readonly cost: string; readonly cents: Cents }[] } | null;
  readonly costs: readonly { readonly cost: string; readonly date: LocalDate; readonly cents: Cents }[];
  readonly undoneOn?: LocalDate | undefined;
}

/** Up to which month accruals are made, and which were made in months that are closed. */
export interface AccrualMonths {
  /** The last month that is over, or is being closed. */
  readonly through: Month;
  readonly closedTo: Month | null;
  /** Accruals of closed months: they stay as they were made, whatever is expected now. */
  readonly frozen: ReadonlyMap<LotId, { readonly on: LocalDate; readonly total: Cents }>;
}

export const accrualKey = (lot: LotId): string => `${lot}/accrued`;

/** @param through the last month that is over, or is being closed */
export function accrualMonths(closes: readonly ClosedMonth[], through: Month): AccrualMonths {
  const frozen = new Map<LotId, { on: LocalDate; total: Cents }>();
  let closedTo: Month | null = null;
  for (const { month, transactions } of closes) {
    if (closedTo === null || month > closedTo) closedTo = month;
    for (const { key, lot, date, corrects, postings } of transactions) {
      if (corrects !== undefined || key !== accrualKey(lot)) continue;
      const credit = postings.filter(({ account }) => account === 'accrued').map((posting) => posting.cents);
      frozen.set(lot, { on: date, total: cents(-sumCents(credit)) });
    }
  }
  return { through: closedTo !== null && closedTo > through ? closedTo : through, closedTo, frozen };
}

/**
 * What is owed at month end for a won car that is not billed: the price until it is billed, and the buy fees expected at
 * the win until fees or the price are. It is made once, at the end of the month of the win, or of the first month that was
 * still open, and stands until the bill comes or the purchase is canceled. Freight and recon are not accrued: they are
 * owed when they are done, not when the car is won. Source: accountingcoach.com, "What is the entry when merchandise has
 * been received but not the vendor's invoice?" (debit inventory, credit an accrued liability, reversed afterwards); that
 * the bill reverses it, and not the first day of the next month, is the practice with goods received and not invoiced.
 * @returns undefined where nothing is accrued
 */
export function accrualOf(car: AccruedCar, { through, closedTo, frozen }: AccrualMonths): CarAccrual | undefined {
  const { lot, won, expected, costs, undoneOn } = car;
  if (won === null) return undefined;
  const own = monthOf(won.date);
  const first = closedTo !== null && closedTo >= own ? nextMonth(closedTo) : own;
  const made = frozen.get(lot);
  const on = made?.on ?? lastDayOf(first);
  if (monthOf(on) > through) return undefined;
  const billedOn = firstDay(costs, 'hammer');
  const feesOn = firstDay(costs, 'fee');
  if ((billedOn !== undefined && billedOn <= on) || (undoneOn !== undefined && undoneOn <= on)) return undefined;
  const fees = sumCents((expected?.lines ?? []).filter(({ cost }) => cost === 'fee').map((line) => line.cents));
  // Fees that were billed by then are not in it, unless their bill came after the month was closed with them.
  const isIn = feesOn === undefined || feesOn > on || (made !== undefined && made.total >= won.hammer + fees);
  const part = isIn ? cents(Math.min(fees, made?.total ?? fees)) : ZERO;
  const canceled = undoneOn !== undefined && (billedOn === undefined || undoneOn < billedOn);
  const feesBackOn = feesOn !== undefined && feesOn <= on ? addDays(on, 1) : feesOn;
  const endsOn = canceled ? undoneOn : billedOn;
  return {
    on,
    hammer: made === undefined ? won.hammer : cents(made.total - part),
    fees: part,
    ...(endsOn !== undefined && { back: { on: endsOn, why: canceled ? 'canceled' : 'billed' } }),
    ...(feesBackOn !== undefined && isIn && (endsOn === undefined || feesBackOn < endsOn) && { feesBackOn }),
  };
}

/** The day of the first bill of a kind; a credit is no bill. */
const firstDay = (costs: AccruedCar['costs'], kind: string): LocalDate | undefined =>
  costs
    .filter((line) => line.cost === kind && line.cents > 0)
    .map(({ date }) => date)
    .sort()[0];
