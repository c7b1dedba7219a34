import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type * as z from 'zod/mini';
import {
  type BusinessCalendar,
  businessCalendarSchema,
  FEDERAL_CALENDAR,
  isBusinessDay,
  whyClosed,
} from '../../../src/domain/deadline/business-calendar.ts';
import { deadlineOf } from '../../../src/domain/deadline/deadline-of.ts';
import { type DeadlineRule, deadlineRuleSchema } from '../../../src/domain/deadline/deadline-rule.ts';
import { HOLIDAY_IDS } from '../../../src/domain/deadline/us-holidays.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { wallClock } from '../../../src/domain/time/wall-clock.ts';
import { WEEKDAYS } from '../../../src/domain/time/weekdays.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const PHOENIX = zone('America/Phoenix');
const on = (text: string) => text as LocalDate;
type Given = Partial<z.input<typeof deadlineRuleSchema>>;
const rule = (given: Given): DeadlineRule =>
  deadlineRuleSchema.parse({ amount: 2, unit: 'business-days', from: 'sale', ...given });
/** The end in Phoenix, seven hours behind all year, as its clock shows it. */
const end = (from: string, given: Given, calendar: BusinessCalendar = FEDERAL_CALENDAR) => {
  const due = deadlineOf(rule(given), instant(Date.parse(`${from}-07:00`)), { zone: PHOENIX, calendar });
  const { date, time } = wallClock(due.at, PHOENIX);
  return `${date} ${time}`;
};

describe('a deadline', () => {
  test('ends with its day when no cut-off hour is stated', () => {
    expect(end('2026-11-24T10:00', { unit: 'calendar-days' })).toBe('2026-11-26 23:59');
  });

  test('of no days is over on the very day, or on the next on which the venue works', () => {
    expect(end('2026-11-24T10:00', { amount: 0, cutOff: '17:00' })).toBe('2026-11-24 17:00');
    expect(end('2026-11-28T10:00', { amount: 0, cutOff: '17:00' })).toBe('2026-11-30 17:00');
  });

  test('that begins with its own day counts it only where the venue works on it', () => {
    expect(end('2026-11-24T10:00', { amount: 1, firstDay: 'same' })).toBe('2026-11-24 23:59');
    expect(end('2026-11-28T10:00', { amount: 1, firstDay: 'same' })).toBe('2026-11-30 23:59');
  });

  test('counts what came after the cut-off hour from the next business day, where the rule says so', () => {
    const strict = { cutOff: '17:00' };
    expect(end('2026-11-24T17:00:00', { ...strict, lateCountsNextDay: true })).toBe('2026-11-27 17:00');
    expect(end('2026-11-24T17:00:01', { ...strict, lateCountsNextDay: true })).toBe('2026-11-30 17:00');
    expect(end('2026-11-24T17:00:01', strict)).toBe('2026-11-27 17:00');
    // After hours on the eve of a holiday: the next business day is day 0.
    const days = { unit: 'calendar-days', amount: 1, lateCountsNextDay: true, ...strict } as const;
    expect(end('2026-11-25T18:00', days)).toBe('2026-11-28 17:00');
  });

  test('in calendar days stays on a closed day, or moves to the next open one, as the rule says', () => {
    expect(end('2026-11-24T10:00', { unit: 'calendar-days', amount: 2 })).toBe('2026-11-26 23:59');
    expect(end('2026-11-24T10:00', { unit: 'calendar-days', amount: 2, whenClosed: 'next-business-day' })).toBe(
      '2026-11-27 23:59',
    );
  });

  test('in hours that end on a closed day moves to the cut-off hour of the next open one, where the rule says so', () => {
    const hours = { unit: 'hours', amount: 48 } as const;
    expect(end('2026-11-27T10:20', hours)).toBe('2026-11-29 10:20');
    const moved = { ...hours, whenClosed: 'next-business-day', cutOff: '12:00' } as const;
    expect(end('2026-11-27T10:20', moved)).toBe('2026-11-30 12:00');
    expect(end('2026-11-24T10:20', { ...moved, amount: 24 })).toBe('2026-11-25 10:20');
  });

  test('tells which days it passed over and why', () => {
    const due = deadlineOf(rule({ amount: 2 }), instant(Date.parse('2026-11-25T10:00-07:00')), {
      zone: PHOENIX,
      calendar: FEDERAL_CALENDAR,
    });
    expect(due.date).toBe('2026-11-30');
    expect(due.skipped).toEqual([
      { date: '2026-11-26', why: 'Thanksgiving Day' },
      { date: '2026-11-28', why: 'Saturday' },
      { date: '2026-11-29', why: 'Sunday' },
    ]);
  });

  test('follows a venue’s own days: a holiday it works on, a day it is closed, a Saturday it opens', () => {
    const calendar = businessCalendarSchema.parse({
      worked: ['columbus'],
      closed: [{ date: '2026-10-13', note: 'Stock count' }],
      open: [{ date: '2026-10-17' }],
    });
    expect(whyClosed(on('2026-10-12'), calendar)).toBeNull();
    expect(whyClosed(on('2026-10-13'), calendar)).toBe('Stock count');
    expect(whyClosed(on('2026-10-17'), calendar)).toBeNull();
    expect(end('2026-10-09T10:00', { amount: 2 }, calendar)).toBe('2026-10-14 23:59');
    expect(end('2026-10-15T10:00', { amount: 2 }, calendar)).toBe('2026-10-17 23:59');
  });

  test('is never counted by a rule whose first day is its own and that has no days', () => {
    const read = deadlineRuleSchema.safeParse({ amount: 0, unit: 'business-days', from: 'sale', firstDay: 'same' });
    expect(read.success).toBe(false);
  });
});

describe('whatever the rule, zone and calendar', () => {
  const calendars = fc.record({
    holidays: fc.constantFrom('federal' as const, 'bank' as const, 'none' as const),
    worked: fc.uniqueArray(fc.constantFrom(...HOLIDAY_IDS), { maxLength: 4 }),
    daysOff: fc.uniqueArray(fc.constantFrom(...WEEKDAYS), { maxLength: 6 }),
    closed: fc.constant<BusinessCalendar['closed']>([]),
    open: fc.constant<BusinessCalendar['open']>([]),
  });
  const zones = fc.constantFrom('America/New_York', 'America/Boise', 'America/Phoenix', 'Asia/Tokyo').map(zone);
  const moments = fc.integer({ min: Date.UTC(2022, 0, 1), max: Date.UTC(2035, 0, 1) }).map(instant);
  const cutOffs = fc.constantFrom('00:00', '12:00', '17:00', '23:59').map((time) => time as DeadlineRule['cutOff']);
  const days = fc.record({
    amount: fc.integer({ min: 1, max: 120 }),
    unit: fc.constantFrom('calendar-days' as const, 'business-days' as const),
    from: fc.constant('sale' as const),
    firstDay: fc.constantFrom('same' as const, 'next' as const),
    cutOff: cutOffs,
    lateCountsNextDay: fc.boolean(),
    whenClosed: fc.constantFrom('stays' as const, 'next-business-day' as const),
  });

  test('one more day never ends earlier, and one more business day always ends later', () => {
    fc.assert(
      fc.property(days, moments, zones, calendars, (given, from, place, calendar) => {
        const at = { zone: place, calendar };
        const [one, more] = [given, { ...given, amount: given.amount + 1 }].map(
          (each) => deadlineOf(each, from, at).at,
        );
        if (given.unit === 'business-days') expect(more).toBeGreaterThan(one ?? 0);
        else expect(more).toBeGreaterThanOrEqual(one ?? 0);
      }),
    );
  });

  test('a deadline in business days ends on one, and exactly so many of them lie behind its start', () => {
    fc.assert(
      fc.property(days, moments, zones, calendars, (given, from, place, calendar) => {
        const due = deadlineOf({ ...given, unit: 'business-days' }, from, { zone: place, calendar });
        expect(isBusinessDay(due.date, calendar)).toBe(true);
        let counted = given.firstDay === 'same' && isBusinessDay(due.countedFrom, calendar) ? 1 : 0;
        for (let day = due.countedFrom; day < due.date; ) {
          day = new Date(Date.parse(day) + 86_400_000).toISOString().slice(0, 10) as LocalDate;
          if (isBusinessDay(day, calendar)) counted += 1;
        }
        expect(counted).toBe(given.amount);
      }),
    );
  });

  test('hours pass as hours', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1500 }), moments, zones, calendars, (amount, from, place, calendar) => {
        const due = deadlineOf(rule({ amount, unit: 'hours' }), from, { zone: place, calendar });
        expect(due.at - from).toBe(amount * 3_600_000);
      }),
    );
  });

  test('where the late count as of the next business day, Saturday is no earlier than Friday evening', () => {
    const late = { unit: 'calendar-days', amount: 1, cutOff: '17:00', lateCountsNextDay: true } as const;
    expect(end('2026-12-04T18:00:00', late)).toBe('2026-12-08 17:00');
    expect(end('2026-12-05T10:00:00', late)).toBe('2026-12-08 17:00');
  });

  test('a later event never has an earlier deadline', () => {
    fc.assert(
      fc.property(days, moments, fc.nat(10 * 86_400_000), zones, calendars, (given, from, more, place, calendar) => {
        const at = { zone: place, calendar };
        const later = deadlineOf(given, instant(from + more), at).at;
        expect(later).toBeGreaterThanOrEqual(deadlineOf(given, from, at).at);
      }),
      { numRuns: 1000 },
    );
  });
});
