import { addDays } from '../time/calendar-day.ts';
import type { LocalDate } from '../time/local-date.ts';
import { weekdayOf } from '../time/wall-clock.ts';

/** The eleven legal public holidays of 5 U.S.C. 6103(a), by names of our own for files. */
export const HOLIDAY_IDS = [
  'new-year',
  'king',
  'washington',
  'memorial',
  'juneteenth',
  'independence',
  'labor',
  'columbus',
  'veterans',
  'thanksgiving',
  'christmas',
] as const;
export type HolidayId = (typeof HOLIDAY_IDS)[number];

export const HOLIDAY_NAMES: Readonly<Record<HolidayId, string>> = {
  'new-year': 'New Year’s Day',
  king: 'Birthday of Martin Luther King, Jr.',
  washington: 'Washington’s Birthday',
  memorial: 'Memorial Day',
  juneteenth: 'Juneteenth',
  independence: 'Independence Day',
  labor: 'Labor Day',
  columbus: 'Columbus Day',
  veterans: 'Veterans Day',
  thanksgiving: 'Thanksgiving Day',
  christmas: 'Christmas Day',
};

export interface Holiday {
  readonly id: HolidayId;
  /** The day itself. */
  readonly date: LocalDate;
  /** The weekday on which it is kept when it falls on a Saturday or a Sunday. */
  readonly observed: LocalDate;
}

/**
 * - `federal`: a Saturday's holiday is kept on the Friday before, a Sunday's on the Monday after (5 U.S.C. 6103(b) and
 *   Executive Order 11582, for offices that work Monday to Friday);
 * - `bank`: a Sunday's is kept on the Monday, a Saturday's is not kept on another day (Federal Reserve Banks).
 */
export type HolidayKeeping = 'federal' | 'bank';

/**
 * The holidays that belong to a year, whenever they are kept: New Year's Day of 2028 is kept on 2027-12-31 and belongs
 * to 2028.
 * @param year 1971 (when the Monday holidays began) or later; Juneteenth and the King holiday from when they became law
 */
export function holidaysOf(year: number, keeping: HolidayKeeping): readonly Holiday[] {
  return HOLIDAY_IDS.filter((id) => year >= (SINCE[id] ?? 0)).map((id) => {
    const date = dateOf(id, year);
    return { id, date, observed: keptOn(date, keeping) };
  });
}

/**
 * The holiday that is kept on a date, on the day itself or on the weekday in its stead; undefined on any other day.
 * Years are worked out once: a list of thousands of deadlines asks for the same few.
 */
export function holidayOn(date: LocalDate, keeping: HolidayKeeping): HolidayId | undefined {
  const year = Number(date.slice(0, 4));
  const key = `${keeping} ${year}`;
  let days = daysOfYears.get(key);
  if (days === undefined) {
    days = new Map();
    // New Year's Day of a year that starts on a Saturday is kept on the last day of the year before.
    for (const { id, date: itself, observed } of [...holidaysOf(year, keeping), ...holidaysOf(year + 1, keeping)])
      for (const day of [itself, observed]) days.set(day, id);
    daysOfYears.set(key, days);
  }
  return days.get(date);
}

const daysOfYears = new Map<string, Map<LocalDate, HolidayId>>();

/** Public Laws 98-144 (first kept in 1986) and 117-17 (signed on 2021-06-17). */
const SINCE: Readonly<Partial<Record<HolidayId, number>>> = { king: 1986, juneteenth: 2021 };

function dateOf(id: HolidayId, year: number): LocalDate {
  switch (id) {
    case 'new-year':
      return onDate(year, 1, 1);
    case 'king':
      return nth(3, 'mon', year, 1);
    case 'washington':
      return nth(3, 'mon', year, 2);
    case 'memorial':
      return addDays(nth(1, 'mon', year, 6), -7);
    case 'juneteenth':
      return onDate(year, 6, 19);
    case 'independence':
      return onDate(year, 7, 4);
    case 'labor':
      return nth(1, 'mon', year, 9);
    case 'columbus':
      return nth(2, 'mon', year, 10);
    case 'veterans':
      return onDate(year, 11, 11);
    case 'thanksgiving':
      return nth(4, 'thu', year, 11);
    case 'christmas':
      return onDate(year, 12, 25);
  }
}

function keptOn(date: LocalDate, keeping: HolidayKeeping): LocalDate {
  const weekday = weekdayOf(date);
  if (weekday === 'sun') return addDays(date, 1);
  return weekday === 'sat' && keeping === 'federal' ? addDays(date, -1) : date;
}

// Four digits, two digits, two digits make a date.
const onDate = (year: number, month: number, day: number): LocalDate =>
  `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}` as LocalDate;

/** The first, second, … such weekday of a month. For the last Monday of May: the first of June less a week. */
function nth(count: number, weekday: 'mon' | 'thu', year: number, month: number): LocalDate {
  let date = onDate(year, month, 1);
  while (weekdayOf(date) !== weekday) date = addDays(date, 1);
  return addDays(date, 7 * (count - 1));
}
