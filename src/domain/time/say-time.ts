import type { Instant } from './instant.ts';
import type { LocalDate } from './local-date.ts';
import { sayDuration } from './say-duration.ts';
import { DAY } from './units.ts';
import { type WallClock, wallClock, weekdayOf } from './wall-clock.ts';
import type { Weekday } from './weekdays.ts';
import type { Zone } from './zone.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;
const DAYS: Readonly<Record<Weekday, string>> = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
};

export const dayName = (weekday: Weekday): string => DAYS[weekday];

/** "Sat Nov 28". */
export const sayDate = (date: LocalDate): string =>
  `${DAYS[weekdayOf(date)].slice(0, 3)} ${MONTHS[Number(date.slice(5, 7)) - 1]} ${Number(date.slice(8))}`;

/** "12:05 PM" on the clock of `zone`. */
export const sayClock = (at: Instant, zone: Zone): string => twelveHours(wallClock(at, zone));

/** Further away than this, nobody takes the year for granted. */
const YEAR_IS_PLAIN = 180 * DAY;

/**
 * "Sat Nov 28, 12:05 PM" on the clock of `zone`.
 * @param near shows the year, "Sun Nov 28, 2027, 12:05 PM", where the moment is half a year or more away from this one
 */
export function sayTime(at: Instant, zone: Zone, near = at): string {
  const clock = wallClock(at, zone);
  const year = Math.abs(at - near) > YEAR_IS_PLAIN ? `, ${clock.date.slice(0, 4)}` : '';
  return `${sayDate(clock.date)}${year}, ${twelveHours(clock)}`;
}

/** "in 2 h 13 min", "13 min ago", "now" within a second. */
export function sayWhen(at: Instant, now: Instant): string {
  if (Math.abs(at - now) < 1000) return 'now';
  return at > now ? `in ${sayDuration(at - now)}` : `${sayDuration(now - at)} ago`;
}

function twelveHours({ time }: WallClock): string {
  const hour = Number(time.slice(0, 2));
  return `${hour % 12 === 0 ? 12 : hour % 12}:${time.slice(3)} ${hour < 12 ? 'AM' : 'PM'}`;
}
