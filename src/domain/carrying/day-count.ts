import type { LocalDate } from '../time/local-date.ts';
import { DAY } from '../time/units.ts';
import type { DayCount } from './carrying-rules.ts';

/** The part of a year between two dates, as an exact fraction, and the days a statement would print. */
export interface YearShare {
  readonly days: number;
  readonly numerator: number;
  readonly denominator: number;
}

/**
 * The share of a year for which interest runs from `from`, included, to `to`, excluded. The 30/360 family and
 * actual/actual follow the 2006 ISDA Definitions, 4.16 (b), (f), (g) and (h).
 * @param to not before `from`
 * @param payoff the date on which the whole debt ends; only 30E/360 ISDA treats the last of February differently there
 */
export function yearShare(rule: DayCount, from: LocalDate, to: LocalDate, payoff?: LocalDate): YearShare {
  const actual = daysBetween(from, to);
  switch (rule) {
    case 'actual/365':
      return { days: actual, numerator: actual, denominator: 365 };
    case 'actual/360':
      return { days: actual, numerator: actual, denominator: 360 };
    case 'actual/actual': {
      const leap = leapDays(from, to);
      return { days: actual, numerator: (actual - leap) * 366 + leap * 365, denominator: 365 * 366 };
    }
    case '30/360':
    case '30E/360':
    case '30E/360 ISDA': {
      const days = thirtyDays(rule, parts(from), parts(to), to === payoff);
      return { days, numerator: days, denominator: 360 };
    }
  }
}

/** Whole days from one date to another; negative when `to` is earlier. */
export function daysBetween(from: LocalDate, to: LocalDate): number {
  return dayNumber(to) - dayNumber(from);
}

/** The date `days` days after `date`. */
export function addDays(date: LocalDate, days: number): LocalDate {
  // The text of an ISO date is a LocalDate by construction.
  return new Date((dayNumber(date) + days) * DAY).toISOString().slice(0, 10) as LocalDate;
}

interface DateParts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

function parts(date: LocalDate): DateParts {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  return { year, month, day };
}

function dayNumber(date: LocalDate): number {
  const { year, month, day } = parts(date);
  return Date.UTC(year, month - 1, day) / DAY;
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/** How many of the days between two dates lie in a leap year. */
function leapDays(from: LocalDate, to: LocalDate): number {
  const end = dayNumber(to);
  let day = dayNumber(from);
  let count = 0;
  for (let { year } = parts(from); day < end; year++) {
    const next = Math.min(end, Date.UTC(year + 1, 0, 1) / DAY);
    if (isLeap(year)) count += next - day;
    day = next;
  }
  return count;
}

function thirtyDays(rule: '30/360' | '30E/360' | '30E/360 ISDA', from: DateParts, to: DateParts, isPayoff: boolean) {
  const lastOfFebruary = ({ year, month, day }: DateParts) => month === 2 && day === (isLeap(year) ? 29 : 28);
  const isda = rule === '30E/360 ISDA';
  const first = from.day === 31 || (isda && lastOfFebruary(from)) ? 30 : from.day;
  const shorten = rule === '30/360' ? to.day === 31 && first === 30 : to.day === 31;
  const last = shorten || (isda && !isPayoff && lastOfFebruary(to)) ? 30 : to.day;
  return 360 * (to.year - from.year) + 30 * (to.month - from.month) + (last - first);
}
