import { describe, expect, test } from 'vitest';
import { addDays, addDaysIn, daysBetween, mondayOf, startOfDay } from '../../../src/domain/time/calendar-day.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { sayDuration } from '../../../src/domain/time/say-duration.ts';
import { sayClock, sayDate, sayTime, sayWhen } from '../../../src/domain/time/say-time.ts';
import { dateIn, wallClock, weekdayOf } from '../../../src/domain/time/wall-clock.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const BOISE = zone('America/Boise');
const date = (text: string) => text as LocalDate;
const at = instant(Date.UTC(2026, 10, 28, 19, 5));

describe('saying a time', () => {
  test('goes by the clock of the store', () => {
    expect(sayTime(at, BOISE)).toBe('Sat Nov 28, 12:05 PM');
    expect(sayTime(at, zone('Europe/London'))).toBe('Sat Nov 28, 7:05 PM');
    expect(sayClock(instant(Date.UTC(2026, 10, 28, 7, 5)), BOISE)).toBe('12:05 AM');
    expect(sayClock(instant(Date.UTC(2026, 10, 28, 20, 0)), BOISE)).toBe('1:00 PM');
    expect(sayDate(date('2026-03-08'))).toBe('Sun Mar 8');
  });

  test.each([
    [0, '0 s'],
    [59_999, '59 s'],
    [60_000, '1 min'],
    [3_600_000, '1 h'],
    [7_980_000, '2 h 13 min'],
    [86_400_000, '1 d'],
    [97_200_000, '1 d 3 h'],
    [-5, '0 s'],
  ])('%i ms is %s', (ms, words) => {
    expect(sayDuration(ms)).toBe(words);
  });

  test('says how far off it is, both ways', () => {
    expect(sayWhen(instant(at + 7_980_000), at)).toBe('in 2 h 13 min');
    expect(sayWhen(instant(at - 300_000), at)).toBe('5 min ago');
    expect(sayWhen(instant(at + 400), at)).toBe('now');
  });
});

describe('calendar days', () => {
  test('are counted across months, leap days and years', () => {
    expect(addDays(date('2028-02-28'), 1)).toBe('2028-02-29');
    expect(addDays(date('2026-12-31'), 1)).toBe('2027-01-01');
    expect(addDays(date('2026-03-01'), -1)).toBe('2026-02-28');
    expect(daysBetween(date('2026-10-30'), date('2026-11-02'))).toBe(3);
    expect(daysBetween(date('2026-03-09'), date('2026-03-07'))).toBe(-2);
  });

  test('know their weekday and the Monday of their week', () => {
    expect(weekdayOf(date('2026-11-28'))).toBe('sat');
    expect(mondayOf(date('2026-11-28'))).toBe('2026-11-23');
    expect(mondayOf(date('2026-11-23'))).toBe('2026-11-23');
    expect(mondayOf(date('2026-11-29'))).toBe('2026-11-23');
  });

  test('belong to a zone', () => {
    const late = instant(Date.UTC(2026, 10, 29, 5, 0));
    expect(dateIn(BOISE, late)).toBe('2026-11-28');
    expect(dateIn(zone('Pacific/Apia'), late)).toBe('2026-11-29');
    expect(wallClock(late, BOISE)).toEqual({ date: '2026-11-28', time: '22:00', second: 0, weekday: 'sat' });
  });

  test('begin at the change where a change skips midnight', () => {
    const santiago = zone('America/Santiago');
    expect(wallClock(startOfDay(date('2026-09-06'), santiago), santiago)).toMatchObject({
      date: '2026-09-06',
      time: '01:00',
    });
  });

  test('are added without moving the hour, and none at all moves nothing', () => {
    expect(addDaysIn(BOISE, at, 0)).toBe(at);
    const inSummer = instant(Date.UTC(2026, 9, 31, 18, 5));
    expect(sayTime(addDaysIn(BOISE, inSummer, 7), BOISE)).toBe('Sat Nov 7, 12:05 PM');
  });
});
