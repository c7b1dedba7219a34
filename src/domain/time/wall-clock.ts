import type { Weekday } from '../setup/store.ts';
import type { Instant } from './instant.ts';
import type { LocalDate, LocalTime } from './local-date.ts';
import type { Zone } from './zone.ts';

/** What a clock on the wall of a place shows. */
export interface WallClock {
  readonly date: LocalDate;
  readonly time: LocalTime;
  /** 0 to 59. */
  readonly second: number;
  readonly weekday: Weekday;
}

/** What a clock in `zone` shows at a moment, whatever zone this machine is set to. */
export function wallClock(at: Instant, zone: Zone): WallClock {
  const text = new Date(at + zoneOffset(at, zone)).toISOString();
  return {
    date: text.slice(0, 10) as LocalDate,
    time: text.slice(11, 16) as LocalTime,
    second: Number(text.slice(17, 19)),
    weekday: weekdayOf(text.slice(0, 10) as LocalDate),
  };
}

/** The calendar date in `zone` at a moment. */
export const dateIn = (zone: Zone, at: Instant): LocalDate => wallClock(at, zone).date;

/** How far the wall clock in `zone` is ahead of UTC at a moment, in milliseconds; negative in the Americas. */
export function zoneOffset(at: Instant, zone: Zone): number {
  const shown = FIELDS.exec(formatter(zone).format(at));
  if (shown === null) throw new Error(`Intl printed a date in a form of its own for ${zone}`);
  const [, month, day, year, hour, minute, second] = shown.map(Number);
  const wall = Date.UTC(year ?? 0, (month ?? 0) - 1, day, hour, minute, second);
  return wall - Math.floor(at / 1000) * 1000;
}

const WEEKDAY_OF_UTC_DAY = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const;

/** The weekday of a calendar date. */
export const weekdayOf = (date: LocalDate): Weekday =>
  WEEKDAY_OF_UTC_DAY[new Date(`${date}T00:00Z`).getUTCDay()] ?? 'sun';

const FIELDS = /^(\d+)\/(\d+)\/(\d+), (\d+):(\d+):(\d+)$/;

/** A formatter costs some 50 µs to make and 2 µs to use, and a list of 50,000 closings uses the same few. */
const formatters = new Map<Zone, Intl.DateTimeFormat>();

function formatter(zone: Zone): Intl.DateTimeFormat {
  const known = formatters.get(zone);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    calendar: 'gregory',
    numberingSystem: 'latn',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  formatters.set(zone, made);
  return made;
}
