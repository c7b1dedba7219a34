import { type Instant, instant } from './instant.ts';
import type { LocalDate, LocalTime } from './local-date.ts';
import { resolveWallTime } from './resolve-wall-time.ts';
import { DAY } from './units.ts';
import { wallClock } from './wall-clock.ts';
import type { Zone } from './zone.ts';
import { zoneOffset } from './zone-offset.ts';

/** The date `days` later (or earlier, when negative). */
export function addDays(date: LocalDate, days: number): LocalDate {
  const at = new Date(`${date}T00:00Z`);
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10) as LocalDate;
}

/** Whole days from one date to another; negative when `to` is earlier. */
export const daysBetween = (from: LocalDate, to: LocalDate): number =>
  Math.round((Date.parse(`${to}T00:00Z`) - Date.parse(`${from}T00:00Z`)) / DAY);

/** The Monday of the week that a date is in. */
export const mondayOf = (date: LocalDate): LocalDate =>
  addDays(date, -((new Date(`${date}T00:00Z`).getUTCDay() + 6) % 7));

/** The first moment of a day in a zone: midnight, or where a clock change skips midnight, the moment of the change. */
export function startOfDay(date: LocalDate, zone: Zone): Instant {
  const midnight = resolveWallTime({ date, time: '00:00' as LocalTime }, zone);
  return midnight.kind === 'gap' ? changeBetween(midnight.earliest, midnight.latest, zone) : midnight.earliest;
}

/** The same time of day some days later; on a day that skips it, the earlier of the two sensible moments. */
export function addDaysIn(zone: Zone, at: Instant, days: number): Instant {
  const { date, time, second } = wallClock(at, zone);
  return days === 0 ? at : resolveWallTime({ date: addDays(date, days), time, second }, zone).earliest;
}

/** The first millisecond of the new offset; the offsets at `from` and `to` must differ. */
function changeBetween(from: Instant, to: Instant, zone: Zone): Instant {
  const old = zoneOffset(from, zone);
  let [low, high] = [from as number, to as number];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (zoneOffset(instant(middle), zone) === old) low = middle;
    else high = middle;
  }
  return instant(high);
}
