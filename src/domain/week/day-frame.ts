import { addDays, startOfDay } from '../time/calendar-day.ts';
import { type Instant, instant } from '../time/instant.ts';
import type { LocalDate, LocalTime } from '../time/local-date.ts';
import { resolveWallTime } from '../time/resolve-wall-time.ts';
import { MINUTE } from '../time/units.ts';
import { wallClock } from '../time/wall-clock.ts';
import type { Zone } from '../time/zone.ts';
import { zoneOffset } from '../time/zone-offset.ts';

/** The hours of a day that are drawn, on the wall clock: from the first, up to but not including the last. */
export interface HoursShown {
  /** 0 to 23. */
  readonly from: number;
  /** 1 to 24. */
  readonly to: number;
}

/** A full hour on the wall clock. */
export interface HourMark {
  readonly at: Instant;
  /** 0 to 23. */
  readonly hour: number;
  /** The clock was put back and shows this hour for the second time. */
  readonly again: boolean;
}

/** One day's stretch of a time line, in moments, so that a day of 23 or 25 hours is as long as it is. */
export interface DayFrame {
  readonly date: LocalDate;
  readonly from: Instant;
  readonly to: Instant;
  readonly hours: readonly HourMark[];
  /** By how many minutes the clock is put forward that day; less than zero when it is put back. */
  readonly shiftMinutes: number;
}

const QUARTER = 15 * MINUTE;

export function dayFrame(date: LocalDate, zone: Zone, shown: HoursShown): DayFrame {
  const [begins, ends] = [startOfDay(date, zone), startOfDay(addDays(date, 1), zone)];
  const from = shown.from === 0 ? begins : resolveWallTime({ date, time: fullHour(shown.from) }, zone).earliest;
  const to = shown.to === 24 ? ends : resolveWallTime({ date, time: fullHour(shown.to) }, zone).latest;
  return {
    date,
    from,
    to,
    hours: hourMarks(from, to, zone),
    shiftMinutes: (zoneOffset(ends, zone) - zoneOffset(begins, zone)) / MINUTE,
  };
}

/** Clock changes of half an hour exist, so the full hours are looked for and not counted out. */
function hourMarks(from: Instant, to: Instant, zone: Zone): HourMark[] {
  const marks: HourMark[] = [];
  for (let at: number = from; at < to; at += QUARTER) {
    const { time } = wallClock(instant(at), zone);
    if (!time.endsWith(':00')) continue;
    const hour = Number(time.slice(0, 2));
    marks.push({ at: instant(at), hour, again: marks.at(-1)?.hour === hour });
  }
  return marks;
}

const fullHour = (hour: number) => `${String(hour).padStart(2, '0')}:00` as LocalTime;
