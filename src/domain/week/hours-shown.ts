import type { LocalTime } from '../time/local-date.ts';
import type { HoursShown } from './day-frame.ts';

/** A working day: shown even when nothing closes in it. */
const ALWAYS: HoursShown = { from: 8, to: 18 };

/** Something that happens on a day, by the store's clock. */
export interface TimesOfDay {
  readonly from: LocalTime;
  /** Its last minute; that of a closing is its first. */
  readonly last: LocalTime;
}

/**
 * The hours that a time line has to show, the same for all its days so that they can be compared: a working day, and
 * whatever lies outside it with an hour around it. Nights in which nothing happens take no room.
 * @param calls moments that are only ticks, so that their own hour is room enough
 */
export function hoursShown(spans: Iterable<TimesOfDay>, calls: Iterable<LocalTime> = []): HoursShown {
  let { from, to } = ALWAYS;
  for (const span of spans) {
    from = Math.min(from, hourOf(span.from) - 1);
    to = Math.max(to, hourOf(span.last) + 2);
  }
  for (const call of calls) {
    from = Math.min(from, hourOf(call));
    to = Math.max(to, hourOf(call) + 1);
  }
  return { from: Math.max(0, from), to: Math.min(24, to) };
}

const hourOf = (time: LocalTime) => Number(time.slice(0, 2));
