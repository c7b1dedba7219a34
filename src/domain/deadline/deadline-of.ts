import { addDays } from '../time/calendar-day.ts';
import { type Instant, instant } from '../time/instant.ts';
import type { LocalDate } from '../time/local-date.ts';
import { resolveWallTime } from '../time/resolve-wall-time.ts';
import { HOUR } from '../time/units.ts';
import { wallClock } from '../time/wall-clock.ts';
import type { Zone } from '../time/zone.ts';
import { type BusinessCalendar, isBusinessDay, onOrAfter, whyClosed } from './business-calendar.ts';
import type { DeadlineRule } from './deadline-rule.ts';

/** Where a deadline is counted: on which clock, and on which days anybody is there. */
export interface DeadlinePlace {
  readonly zone: Zone;
  readonly calendar: BusinessCalendar;
}

/** A day that was passed over, and why. */
export interface DaySkipped {
  readonly date: LocalDate;
  readonly why: string;
}

export interface DueTime {
  /** The last moment that is still in time. */
  readonly at: Instant;
  /** Its date on the venue's clock. */
  readonly date: LocalDate;
  /** From which date days were counted; later than the event's own where that came after the cut-off hour or on a closed day. */
  readonly countedFrom: LocalDate;
  /** Why that is not the event's own day. */
  readonly putOff?: 'cut-off' | 'closed-day';
  /** The business days' holidays and days off that were not counted, and a closed last day that was moved. */
  readonly skipped: readonly DaySkipped[];
}

/**
 * When a rule's time is over.
 *
 * Hours are hours that pass, whatever the clocks do. Days are dates on the venue's clock and end at its cut-off hour; where
 * a clock change makes that hour twofold or skips it, the earlier moment is taken, because a claim an hour early is a
 * claim and one an hour late is none.
 * @param from the moment of the event that the rule counts from
 */
export function deadlineOf(rule: DeadlineRule, from: Instant, { zone, calendar }: DeadlinePlace): DueTime {
  return rule.unit === 'hours' ? afterHours(rule, from, { zone, calendar }) : afterDays(rule, from, { zone, calendar });
}

function afterHours(rule: DeadlineRule, from: Instant, { zone, calendar }: DeadlinePlace): DueTime {
  const countedFrom = wallClock(from, zone).date;
  const end = instant(from + rule.amount * HOUR);
  const { date } = wallClock(end, zone);
  if (rule.whenClosed === 'stays' || isBusinessDay(date, calendar)) return { at: end, date, countedFrom, skipped: [] };
  const skipped: DaySkipped[] = [];
  const moved = nextOpen(date, calendar, skipped);
  return { at: momentOf(moved, rule, zone), date: moved, countedFrom, skipped };
}

function afterDays(rule: DeadlineRule, from: Instant, { zone, calendar }: DeadlinePlace): DueTime {
  const clock = wallClock(from, zone);
  const late = rule.lateCountsNextDay && `${clock.time}:${pad(clock.second)}` > `${rule.cutOff}:00`;
  // A rule that puts the late off to a business day puts off what comes on a closed day as well; else Saturday's event
  // would have the earlier deadline than one of Friday evening.
  const countedFrom = rule.lateCountsNextDay
    ? onOrAfter(late ? addDays(clock.date, 1) : clock.date, calendar)
    : clock.date;
  const skipped: DaySkipped[] = [];
  const last =
    rule.unit === 'business-days'
      ? nthBusinessDay(countedFrom, rule, calendar, skipped)
      : addDays(countedFrom, rule.firstDay === 'same' ? rule.amount - 1 : rule.amount);
  const date = rule.whenClosed === 'next-business-day' ? nextOpen(last, calendar, skipped) : last;
  const putOff = countedFrom === clock.date ? {} : { putOff: late ? ('cut-off' as const) : ('closed-day' as const) };
  return { at: momentOf(date, rule, zone), date, countedFrom, skipped, ...putOff };
}

/** Day 1 is the first business day from the day after (or the very day); 0 days end on the day itself, or the next open one. */
function nthBusinessDay(
  base: LocalDate,
  { amount, firstDay }: DeadlineRule,
  calendar: BusinessCalendar,
  skipped: DaySkipped[],
): LocalDate {
  if (amount === 0 || firstDay === 'same') {
    let day = nextOpen(base, calendar, skipped);
    for (let counted = 1; counted < amount; counted += 1) day = nextOpen(addDays(day, 1), calendar, skipped);
    return day;
  }
  let day = base;
  for (let counted = 0; counted < amount; counted += 1) day = nextOpen(addDays(day, 1), calendar, skipped);
  return day;
}

function nextOpen(date: LocalDate, calendar: BusinessCalendar, skipped: DaySkipped[]): LocalDate {
  const open = onOrAfter(date, calendar);
  for (let day = date; day < open; day = addDays(day, 1))
    skipped.push({ date: day, why: whyClosed(day, calendar) ?? '' });
  return open;
}

const momentOf = (date: LocalDate, { cutOff }: DeadlineRule, zone: Zone): Instant =>
  resolveWallTime({ date, time: cutOff }, zone).earliest;

const pad = (second: number) => String(second).padStart(2, '0');
