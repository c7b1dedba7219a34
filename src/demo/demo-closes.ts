import { readCloseTime } from '../domain/close/read-close-time.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import type { CloseTime } from '../domain/time/close-time.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import { sayClock } from '../domain/time/say-time.ts';
import { MINUTE } from '../domain/time/units.ts';
import { wallClock } from '../domain/time/wall-clock.ts';
import { type Zone, zone } from '../domain/time/zone.ts';
import { DEMO_ZONE } from './demo-setup.ts';

export type DemoVenue = 'saguaro' | 'saltmarsh' | 'caliche' | 'fogline';

export const VENUE_ZONES: Record<DemoVenue, Zone> = {
  saguaro: zone('America/Phoenix'),
  saltmarsh: zone('America/New_York'),
  caliche: zone('America/Chicago'),
  fogline: zone('America/Los_Angeles'),
};

/** The Saturday whose rush is still ahead: this week's, or next week's once it has begun. */
export function comingSaturday(now: Instant): LocalDate {
  const { date, weekday, time } = wallClock(now, DEMO_ZONE);
  const days = (['sat', 'fri', 'thu', 'wed', 'tue', 'mon', 'sun'] as const).indexOf(weekday as 'sat');
  return addDays(date, days === 0 && time >= '10:00' ? 7 : days);
}

/** A close at a time of day on the store's clock, written the way its own venue would print it. */
export function closeInStoreTime(venue: DemoVenue, date: LocalDate, time: string, now: Instant): CloseTime {
  const storeTime = read(`${date}T${time}:00`, DEMO_ZONE, now);
  return closeAt(venue, storeTime.instant, now);
}

/** A close some minutes from now, to the full minute. */
export const closeInMinutes = (venue: DemoVenue, minutes: number, now: Instant): CloseTime =>
  closeAt(venue, instant(Math.ceil(now / MINUTE) * MINUTE + minutes * MINUTE), now);

/** A close whose page says a summer zone in winter, or a winter zone in summer: kept with its doubt. */
export function doubtfulClose(date: LocalDate, now: Instant): CloseTime {
  const letters = isSummerInNewYork(date) ? 'EST' : 'EDT';
  return read(`${date} 3:20 PM ${letters}`, VENUE_ZONES.saltmarsh, now);
}

function isSummerInNewYork(date: LocalDate): boolean {
  return wallClock(instant(Date.parse(`${date}T16:00Z`)), VENUE_ZONES.saltmarsh).time === '12:00';
}

function closeAt(venue: DemoVenue, at: Instant, now: Instant): CloseTime {
  const { date } = wallClock(at, VENUE_ZONES[venue]);
  return read(`${date} ${sayClock(at, VENUE_ZONES[venue])}`, VENUE_ZONES[venue], now);
}

function read(text: string, venueZone: Zone, now: Instant): CloseTime {
  const close = readCloseTime(text, { now, storeZone: DEMO_ZONE, venueZone });
  if (!close.ok) throw new Error(`the demo has a close that can't be read: ${text}: ${close.message}`);
  return close.value;
}
