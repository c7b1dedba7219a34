import * as z from 'zod/mini';
import { addDays } from '../time/calendar-day.ts';
import type { LocalDate } from '../time/local-date.ts';

/** A calendar month of the store, `YYYY-MM`. Sorts as text. */
export const monthSchema = z
  .string()
  .check(z.regex(/^\d{4}-(0[1-9]|1[0-2])$/), z.describe('a month, YYYY-MM'))
  .brand<'Month'>();
export type Month = z.infer<typeof monthSchema>;

// A date begins with its month.
export const monthOf = (date: LocalDate): Month => date.slice(0, 7) as Month;

export const firstDayOf = (month: Month): LocalDate => `${month}-01` as LocalDate;

export const lastDayOf = (month: Month): LocalDate => addDays(firstDayOf(nextMonth(month)), -1);

export const nextMonth = (month: Month): Month => monthOf(addDays(firstDayOf(month), 31));

export const monthBefore = (month: Month): Month => monthOf(addDays(firstDayOf(month), -1));

const NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** "November 2026". */
export const monthInWords = (month: Month): string => `${NAMES[Number(month.slice(5)) - 1]} ${month.slice(0, 4)}`;
