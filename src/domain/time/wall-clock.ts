import type { Instant } from './instant.ts';
import type { LocalDate, LocalTime } from './local-date.ts';
import { DAY, MINUTE } from './units.ts';
import type { Weekday } from './weekdays.ts';
import type { Zone } from './zone.ts';
import { zoneOffset } from './zone-offset.ts';

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

const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const;

/** The weekday of a calendar date. */
export const weekdayOf = (date: LocalDate): Weekday => weekdayOfDay(Date.parse(`${date}T00:00Z`) / DAY);

/** 1970-01-01, the day 0, was a Thursday. */
const weekdayOfDay = (day: number): Weekday => WEEKDAYS[(((day + 4) % 7) + 7) % 7] ?? 'sun';
