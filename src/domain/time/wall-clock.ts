import type { Instant } from './instant.ts';
import type { LocalDate, LocalTime } from './local-date.ts';
import { DAY, HOUR, MINUTE } from './units.ts';
import type { Weekday } from './weekdays.ts';
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
  const local = at + zoneOffset(at, zone);
  const day = Math.floor(local / DAY);
  const second = Math.floor((local - day * DAY) / 1000);
  return {
    date: dateOfDay(day),
    time: timeOfMinute(Math.floor(second / 60)),
    second: second % 60,
    weekday: weekdayOfDay(day),
  };
}

/** The calendar date in `zone` at a moment. */
export const dateIn = (zone: Zone, at: Instant): LocalDate => dateOfDay(Math.floor((at + zoneOffset(at, zone)) / DAY));

/** Written once each: the closings of a week are thousands, and its days seven. */
const dates = new Map<number, LocalDate>();
function dateOfDay(day: number): LocalDate {
  const known = dates.get(day) ?? (new Date(day * DAY).toISOString().slice(0, 10) as LocalDate);
  dates.set(day, known);
  return known;
}

const times: LocalTime[] = [];
function timeOfMinute(minute: number): LocalTime {
  const known = times[minute] ?? (new Date(minute * MINUTE).toISOString().slice(11, 16) as LocalTime);
  times[minute] = known;
  return known;
}

/** A stretch in which no clock was ever changed twice: between two changes of any zone lie days. */
const STRETCH = 6 * HOUR;

/** By zone and stretch, the offset at its beginning and its end alike; null where the clock is changed within it. */
const offsets = new Map<Zone, Map<number, number | null>>();

/**
 * How far the wall clock in `zone` is ahead of UTC at a moment, in milliseconds; negative in the Americas. Asked for
 * thousands of moments of one week it asks Intl a few dozen times.
 */
export function zoneOffset(at: Instant, zone: Zone): number {
  const stretch = Math.floor(at / STRETCH);
  const ofZone = offsets.get(zone) ?? new Map<number, number | null>();
  if (ofZone.size === 0) offsets.set(zone, ofZone);
  let offset = ofZone.get(stretch);
  if (offset === undefined) {
    const begins = askOffset(stretch * STRETCH, zone);
    offset = begins === askOffset((stretch + 1) * STRETCH, zone) ? begins : null;
    ofZone.set(stretch, offset);
  }
  return offset ?? askOffset(at, zone);
}

function askOffset(at: number, zone: Zone): number {
  const shown = FIELDS.exec(formatter(zone).format(at));
  if (shown === null) throw new Error(`Intl printed a date in a form of its own for ${zone}`);
  const [, month, day, year, hour, minute, second] = shown.map(Number);
  const wall = Date.UTC(year ?? 0, (month ?? 0) - 1, day, hour, minute, second);
  return wall - Math.floor(at / 1000) * 1000;
}

const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const;

/** The weekday of a calendar date. */
export const weekdayOf = (date: LocalDate): Weekday => weekdayOfDay(Date.parse(`${date}T00:00Z`) / DAY);

/** 1970-01-01, the day 0, was a Thursday. */
const weekdayOfDay = (day: number): Weekday => WEEKDAYS[(((day + 4) % 7) + 7) % 7] ?? 'sun';

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
