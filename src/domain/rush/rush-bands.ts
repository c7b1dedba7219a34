import type { Rush } from '../setup/store.ts';
import { addDays } from '../time/calendar-day.ts';
import type { Instant } from '../time/instant.ts';
import type { LocalDate } from '../time/local-date.ts';
import { resolveWallTime } from '../time/resolve-wall-time.ts';
import { MINUTE } from '../time/units.ts';
import { dateIn, weekdayOf } from '../time/wall-clock.ts';
import type { Zone } from '../time/zone.ts';
import { type DutySpan, dutyOf, hasDuty } from './duty.ts';

/** One stretch of busy hours, as moments: from the first, up to but not including the last. */
export interface RushBand {
  /** The day in store time. */
  readonly date: LocalDate;
  readonly from: Instant;
  readonly to: Instant;
  /** What the exception for this date is called; empty for an ordinary weekday. */
  readonly note: string;
  /** Who is on duty when, in order and without a gap; empty where the setup names nobody at all. */
  readonly duty: readonly DutySpan[];
}

/** How a moment stands to the busy hours; `band` is the one it is in or near. */
export type RushStanding =
  | { readonly kind: 'in' | 'near'; readonly band: RushBand }
  | { readonly kind: 'clear'; readonly band?: undefined };

/** The busy hours of every day, worked out when first asked for and kept. */
export interface RushCalendar {
  /** The busy hours of one day in order; hours that touch or overlap are one band. */
  readonly bandsOn: (date: LocalDate) => readonly RushBand[];
  /** Every band that reaches into a stretch of time (a week of a time line), in order. */
  readonly bandsBetween: (from: Instant, to: Instant) => readonly RushBand[];
  /** Whether a moment is in the busy hours, near them, or clear of them. */
  readonly of: (at: Instant) => RushStanding;
}

/**
 * Busy hours in store time as moments, through clock changes: when the clock skips or repeats an end of them, they reach
 * as far as either reading.
 * @param nearMinutes how near to them still counts as near
 */
export function rushCalendar(rush: Rush, zone: Zone, nearMinutes: number): RushCalendar {
  const known = new Map<LocalDate, readonly RushBand[]>();
  const bandsOn = (date: LocalDate): readonly RushBand[] => {
    const kept = known.get(date);
    if (kept !== undefined) return kept;
    const bands = bandsOf(rush, zone, date);
    known.set(date, bands);
    return bands;
  };
  const bandsBetween = (from: Instant, to: Instant): readonly RushBand[] => {
    const bands: RushBand[] = [];
    for (let date = dateIn(zone, from); date <= dateIn(zone, to); date = addDays(date, 1))
      bands.push(...bandsOn(date).filter((band) => band.from < to && band.to > from));
    return bands;
  };
  const around = new Map<LocalDate, readonly RushBand[]>();
  const bandsAround = (date: LocalDate): readonly RushBand[] => {
    const kept = around.get(date);
    if (kept !== undefined) return kept;
    // A margin may reach over midnight.
    const bands = [addDays(date, -1), date, addDays(date, 1)].flatMap(bandsOn);
    around.set(date, bands);
    return bands;
  };
  return { bandsOn, bandsBetween, of: (at) => standingOf(at, bandsAround(dateIn(zone, at)), nearMinutes * MINUTE) };
}

/** An exception replaces the whole weekday; one without hours means no rush that day. */
function bandsOf({ weekly, exceptions }: Rush, zone: Zone, date: LocalDate): readonly RushBand[] {
  const exception = exceptions.find((one) => one.date === date);
  const hours = exception?.hours ?? weekly.filter((one) => one.weekday === weekdayOf(date));
  const bands: RushBand[] = [];
  const named: DutySpan[] = [];
  for (const { from, to, who } of hours.toSorted((a, b) => (a.from < b.from ? -1 : 1))) {
    const start = resolveWallTime({ date, time: from }, zone).earliest;
    const end = resolveWallTime({ date, time: to }, zone).latest;
    named.push({ from: start, to: end, who });
    const before = bands.at(-1);
    if (before === undefined || start > before.to)
      bands.push({ date, from: start, to: end, note: exception?.note ?? '', duty: [] });
    else if (end > before.to) bands[bands.length - 1] = { ...before, to: end };
  }
  if (!hasDuty({ weekly, exceptions })) return bands;
  const duty = dutyOf(named);
  return bands.map((band) => ({ ...band, duty: duty.filter(({ from, to }) => from >= band.from && to <= band.to) }));
}

/** @param bands in the order of their times */
function standingOf(at: Instant, bands: readonly RushBand[], near: number): RushStanding {
  let nearest: RushStanding = { kind: 'clear' };
  let least = near;
  for (const band of bands) {
    if (at >= band.from && at < band.to) return { kind: 'in', band };
    const distance = at < band.from ? band.from - at : at - band.to;
    if (distance > least || (nearest.kind === 'near' && distance === least)) continue;
    nearest = { kind: 'near', band };
    least = distance;
  }
  return nearest;
}
