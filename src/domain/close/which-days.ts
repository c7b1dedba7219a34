import { addDays, daysBetween } from '../time/calendar-day.ts';
import type { CloseDoubt } from '../time/close-time.ts';
import type { LocalDate } from '../time/local-date.ts';
import { weekdayOf } from '../time/wall-clock.ts';
import type { Weekday } from '../time/weekdays.ts';
import { calendarDate } from './calendar-date.ts';
import { type DateOrder, orderedDates } from './date-order.ts';
import type { Token, TokenOf, WrittenDate } from './token.ts';

/** Days that a text can mean, and why there is more than one. */
export interface Days {
  readonly dates: readonly LocalDate[];
  readonly doubts: readonly CloseDoubt[];
}

/** What a day depends on beside its words. */
export interface DayContext {
  /** What the clock shows where the time is said of. */
  readonly today: LocalDate;
  /** Today at the store, which "tomorrow" may be said of as well. */
  readonly storeToday: LocalDate;
  /** Whether a time on that day is over. */
  readonly isOver: (date: LocalDate) => boolean;
  /** It is said to have closed. */
  readonly closed: boolean;
  /** The order of day and month in the column that it stands in, where that is known. */
  readonly order?: DateOrder | undefined;
}

/** A sale is announced at most this long ahead, and a close without a year can be this long past. */
const AHEAD = 180;
const BEHIND = 31;
/** "The 24th" said on the 25th may be yesterday's. */
const JUST_PAST = 7;

export type DayToken = TokenOf<'date'> | TokenOf<'weekday'> | TokenOf<'relative'>;

export const isDay = (token: Token): token is DayToken =>
  token.kind === 'date' || token.kind === 'weekday' || token.kind === 'relative';

/** The days that these words name together; none when there is no such day. */
export function whichDays(tokens: readonly DayToken[], context: DayContext): Days {
  const dates = tokens.filter((token) => token.kind === 'date').map(({ date }) => datesOf(date, context));
  const relatives = tokens.filter((token) => token.kind === 'relative').map((token) => relativeDays(token, context));
  const weekdays = tokens.filter((token) => token.kind === 'weekday');
  if (dates.length + relatives.length === 0)
    return weekdays.length === 0
      ? withoutDay(context)
      : anyOf(
          weekdays.map((weekday) => weekdayAlone(weekday, context)),
          'range',
        );
  const named = anyOf(dates, 'range');
  const agreed = relatives.every(({ dates: days }) =>
    days.some((day) => dates.length === 0 || named.dates.includes(day)),
  );
  if (relatives.length === 0) return held(named, weekdays, context);
  const said = anyOf(relatives, 'range');
  if (dates.length === 0) return held(said, weekdays, context);
  return held(agreed ? named : anyOf([named, said], 'two-clocks'), weekdays, context);
}

/** One of several days; told why, where they are not all the same. */
function anyOf(each: readonly Days[], because: CloseDoubt): Days {
  const own = each.flatMap(({ doubts }) => doubts);
  const differ = new Set(each.map(({ dates }) => dates.join())).size > 1;
  return { dates: distinct(each.flatMap(({ dates }) => dates)), doubts: differ ? [because, ...own] : own };
}

/** No day is said: today, or where that time is over, today or tomorrow. */
function withoutDay({ today, isOver, closed }: DayContext): Days {
  if (closed) return certain(isOver(today) ? today : addDays(today, -1));
  return isOver(today) ? { dates: [today, addDays(today, 1)], doubts: ['which-day'] } : certain(today);
}

function weekdayAlone({ weekday, which }: TokenOf<'weekday'>, { today, storeToday, isOver, closed }: DayContext): Days {
  const next = (from: LocalDate) =>
    [0, 1, 2, 3, 4, 5, 6].map((days) => addDays(from, days)).find((date) => weekdayOf(date) === weekday) ?? from;
  const coming = next(today);
  if (closed || which === 'last') return certain(isOver(coming) ? coming : addDays(coming, -7));
  if (which === 'week-from') return certain(addDays(coming, 7));
  if (which === 'next')
    return coming === today
      ? certain(addDays(coming, 7))
      : { dates: [coming, addDays(coming, 7)], doubts: ['which-day'] };
  if (coming === today && isOver(today)) return { dates: [today, addDays(today, 7)], doubts: ['which-day'] };
  const atStore = next(storeToday);
  return atStore === coming || storeToday === today ? certain(coming) : either(coming, atStore);
}

const either = (a: LocalDate, b: LocalDate): Days =>
  a === b ? certain(a) : { dates: distinct([a, b]), doubts: ['which-day'] };

const relativeDays = ({ days }: TokenOf<'relative'>, { today, storeToday }: DayContext): Days =>
  either(addDays(today, days), addDays(storeToday, days));

/** Lets a weekday have its say: it picks among the dates, or contradicts all of them. */
function held(days: Days, weekdays: readonly TokenOf<'weekday'>[], { today }: DayContext): Days {
  const [weekday] = weekdays;
  if (weekday === undefined || days.dates.length === 0) return days;
  const fits = days.dates.filter((date) => weekdays.some((one) => weekdayOf(date) === one.weekday));
  const doubts = days.doubts.filter((doubt) => doubt !== 'day-order' && doubt !== 'which-day');
  const plausible = fits.filter((date) => days.dates.length === 1 || isPlausible(date, today));
  if (plausible.length > 0) return { dates: plausible, doubts: plausible.length > 1 ? days.doubts : doubts };
  const near = days.dates.filter((date) => isPlausible(date, today));
  const meant = near.length > 0 ? near : days.dates;
  return {
    dates: distinct(meant.flatMap((date) => [date, nearest(date, weekday.weekday)])),
    doubts: ['weekday', ...doubts],
  };
}

const isPlausible = (date: LocalDate, today: LocalDate): boolean => {
  const ahead = daysBetween(today, date);
  return ahead <= AHEAD && ahead >= -BEHIND;
};

/** The day of that name that is least far away. */
const nearest = (date: LocalDate, weekday: Weekday): LocalDate =>
  [-1, 1, -2, 2, -3, 3].map((days) => addDays(date, days)).find((one) => weekdayOf(one) === weekday) ?? date;

function datesOf(date: WrittenDate, context: DayContext): Days {
  if (date.form === 'day') return dayOfMonth(date.day, context);
  if (date.form === 'plain') return yearSettled(date.year === null ? null : [date.year], date.month, date.day, context);
  const orders = orderedDates(date, context.order, context.today);
  const each = orders.map(({ years, month, day }) => yearSettled(years, month, day, context));
  const found = distinct(each.flatMap(({ dates }) => dates));
  const over = found.filter(context.isOver);
  if (context.closed && over.length > 0) return { dates: over.slice(-1), doubts: [] };
  const own = each.flatMap(({ doubts }) => doubts);
  const open = each.filter(({ dates }) => dates.length > 0).length > 1 && found.length > 1;
  return { dates: found, doubts: open ? ['day-order', ...own] : own };
}

/** @param years those it can be, or null when none is written */
function yearSettled(years: readonly number[] | null, month: number, day: number, context: DayContext): Days {
  const { today, isOver, closed } = context;
  if (years !== null)
    return closedLate(
      years.flatMap((year) => calendarDate(year, month, day)),
      context,
    );
  const thisYear = Number(today.slice(0, 4));
  const all = [thisYear - 1, thisYear, thisYear + 1].flatMap((year) => calendarDate(year, month, day));
  const past = all.filter(isOver).at(-1);
  const future = all.find((date) => !isOver(date));
  if (closed && past !== undefined) return certain(past);
  if (future === undefined) return { dates: past === undefined ? [] : [past], doubts: [] };
  const near = past !== undefined && daysBetween(past, today) <= BEHIND;
  if (!near && daysBetween(today, future) <= AHEAD) return certain(future);
  return { dates: past === undefined ? [future] : [past, future], doubts: past === undefined ? [] : ['which-day'] };
}

/** Said to have closed, on a day to come: one of the two is wrong. */
const closedLate = (dates: readonly LocalDate[], { closed, isOver }: DayContext): Days => ({
  dates,
  doubts: closed && dates.some((date) => !isOver(date)) ? ['closed-ahead'] : [],
});

function dayOfMonth(day: number, { today, isOver, closed }: DayContext): Days {
  const first = `${today.slice(0, 8)}01` as LocalDate;
  const months = [-1, 0, 1, 2].map(
    (month) => new Date(Date.UTC(Number(first.slice(0, 4)), Number(first.slice(5, 7)) - 1 + month, 1)),
  );
  const all = months.flatMap((month) => calendarDate(month.getUTCFullYear(), month.getUTCMonth() + 1, day));
  const past = all.filter(isOver).at(-1);
  const future = all.find((date) => !isOver(date));
  if (closed && past !== undefined) return certain(past);
  if (future === undefined) return { dates: [], doubts: [] };
  const justPast = past !== undefined && daysBetween(past, today) <= JUST_PAST;
  return justPast ? { dates: [past, future], doubts: ['which-day'] } : certain(future);
}

const certain = (date: LocalDate): Days => ({ dates: [date], doubts: [] });
const distinct = (dates: readonly LocalDate[]): readonly LocalDate[] => [...new Set(dates)].sort();
