import * as z from 'zod/mini';
import { addDays } from '../time/calendar-day.ts';
import { type LocalDate, localDateSchema } from '../time/local-date.ts';
import { dayName } from '../time/say-time.ts';
import { weekdayOf } from '../time/wall-clock.ts';
import { WEEKDAYS, type Weekday } from '../time/weekdays.ts';
import { HOLIDAY_IDS, HOLIDAY_NAMES, holidayOn } from './us-holidays.ts';

const dates = z
  .array(z.strictObject({ date: localDateSchema, note: z._default(z.string().check(z.maxLength(80)), '') }))
  .check(z.maxLength(300));

/**
 * On which days a venue works. It starts from the federal holidays and says where the venue differs; a day named in
 * `open` is worked whatever else says, and one in `closed` is not.
 */
export const businessCalendarSchema = z.strictObject({
  holidays: z._default(
    z
      .enum(['federal', 'bank', 'none'])
      .check(
        z.describe(
          'which holidays are observed: federal (a Saturday holiday on Friday), bank (a Saturday holiday not at all) or none',
        ),
      ),
    'federal',
  ),
  /** Holidays on which this venue works all the same. */
  worked: z._default(z.array(z.enum(HOLIDAY_IDS)).check(z.describe('holidays on which this venue is open')), []),
  daysOff: z._default(
    z.array(z.enum(WEEKDAYS)).check(z.maxLength(6), z.describe('weekdays that are not business days')),
    ['sat', 'sun'],
  ),
  closed: z._default(dates.check(z.describe('single dates on which the venue is closed')), []),
  open: z._default(dates.check(z.describe('single dates on which the venue is open anyway')), []),
});
export type BusinessCalendar = z.infer<typeof businessCalendarSchema>;

/** Monday to Friday without the federal holidays: what holds until a venue says otherwise. */
export const FEDERAL_CALENDAR: BusinessCalendar = businessCalendarSchema.parse({});

/** Why a date is not a business day, in words ("Sunday", "Thanksgiving Day"); null when it is one. */
export function whyClosed(date: LocalDate, calendar: BusinessCalendar): string | null {
  if (calendar.open.some((day) => day.date === date)) return null;
  const closed = calendar.closed.find((day) => day.date === date);
  if (closed !== undefined) return closed.note === '' ? 'closed that day' : closed.note;
  const weekday: Weekday = weekdayOf(date);
  if (calendar.daysOff.includes(weekday)) return dayName(weekday);
  return holidayKept(date, calendar);
}

export const isBusinessDay = (date: LocalDate, calendar: BusinessCalendar): boolean =>
  whyClosed(date, calendar) === null;

/** The date itself when the venue works on it, else the next one on which it does. */
export function onOrAfter(date: LocalDate, calendar: BusinessCalendar): LocalDate {
  let day = date;
  for (let tried = 0; !isBusinessDay(day, calendar); tried += 1) {
    if (tried > LONGEST_CLOSURE) throw new RangeError(`no business day for years after ${date}`);
    day = addDays(day, 1);
  }
  return day;
}

/** One weekday at least is always worked, and at most 300 dates of it are closed: that many weeks, and some holidays. */
const LONGEST_CLOSURE = 3000;

function holidayKept(date: LocalDate, { holidays, worked }: BusinessCalendar): string | null {
  const id = holidays === 'none' ? undefined : holidayOn(date, holidays);
  return id === undefined || worked.includes(id) ? null : HOLIDAY_NAMES[id];
}
