import { daysBetween } from '../time/calendar-day.ts';
import type { LocalDate } from '../time/local-date.ts';
import { calendarDate } from './calendar-date.ts';
import type { WrittenDate } from './token.ts';

/** In which order day, month and year stand in figures. */
export type DateOrder = 'month-first' | 'day-first' | 'year-first';

/** One way to read figures. */
export interface OrderedDate {
  readonly order: DateOrder;
  /** Null when none is written. */
  readonly years: readonly number[] | null;
  readonly month: number;
  readonly day: number;
}

type Figures = Extract<WrittenDate, { form: 'figures' }>;

/** With a year of two figures, a date further away than this is a misreading, where there is a nearer one. */
const FAR = 400;

/**
 * The ways to read figures that are dates at all: all of them, or where the order is known only that one, if it gives a date.
 * @param today tells a year of two figures from a day
 */
export function orderedDates(figures: Figures, order: DateOrder | undefined, today: LocalDate): readonly OrderedDate[] {
  const all = readings(figures).filter((reading) => isDate(reading, today));
  const known = all.filter((reading) => reading.order === order);
  if (order !== undefined && known.length > 0) return known;
  const near = all.filter((reading) => reading.years === null || isNear(reading, today));
  return figures.year?.length === 2 && near.length > 0 ? near : all;
}

function readings({ parts: [first, second], year }: Figures): readonly OrderedDate[] {
  const years = year === null ? null : [year.length === 2 ? 2000 + Number(year) : Number(year)];
  const monthFirst = { order: 'month-first', years, month: first, day: second } as const;
  const dayFirst = { order: 'day-first', years, month: second, day: first } as const;
  if (year?.length !== 2) return [monthFirst, dayFirst];
  return [monthFirst, dayFirst, { order: 'year-first', years: [2000 + first], month: second, day: Number(year) }];
}

const isDate = ({ years, month, day }: OrderedDate, today: LocalDate): boolean =>
  (years ?? [leapYear(today)]).some((year) => calendarDate(year, month, day).length > 0);

/** A year in which Feb 29 can be. */
const leapYear = (today: LocalDate): number => Math.floor(Number(today.slice(0, 4)) / 4) * 4;

const isNear = ({ years, month, day }: OrderedDate, today: LocalDate): boolean =>
  (years ?? []).some((year) =>
    calendarDate(year, month, day).some((date) => Math.abs(daysBetween(today, date)) <= FAR),
  );
