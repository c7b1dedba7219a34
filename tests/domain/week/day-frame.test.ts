import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, startOfDay } from '../../../src/domain/time/calendar-day.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { HOUR } from '../../../src/domain/time/units.ts';
import { dateIn, wallClock } from '../../../src/domain/time/wall-clock.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { dayFrame } from '../../../src/domain/week/day-frame.ts';

const BOISE = zone('America/Boise');
const WHOLE = { from: 0, to: 24 };
const day = (text: string) => text as LocalDate;
const hoursOf = (date: string, shown = WHOLE, where = BOISE) => dayFrame(day(date), where, shown);

test('an ordinary day has 24 hours', () => {
  const frame = hoursOf('2026-11-28');
  expect((frame.to - frame.from) / HOUR).toBe(24);
  expect(frame.hours.map(({ hour }) => hour)).toEqual(Array.from({ length: 24 }, (_, i) => i));
  expect(frame.shiftMinutes).toBe(0);
});

test('the day the clock goes forward has 23 hours and no 2 AM', () => {
  const frame = hoursOf('2027-03-14');
  expect((frame.to - frame.from) / HOUR).toBe(23);
  expect(frame.hours.map(({ hour }) => hour)).not.toContain(2);
  expect(frame.hours).toHaveLength(23);
  expect(frame.shiftMinutes).toBe(60);
});

test('the day the clock goes back has 25 hours, and 1 AM comes again', () => {
  const frame = hoursOf('2026-11-01');
  expect((frame.to - frame.from) / HOUR).toBe(25);
  expect(frame.hours.slice(0, 4).map(({ hour, again }) => [hour, again])).toEqual([
    [0, false],
    [1, false],
    [1, true],
    [2, false],
  ]);
  expect(frame.shiftMinutes).toBe(-60);
});

test('from the morning on, such a day is as long as any other, and still says that it is not one', () => {
  const frame = hoursOf('2026-11-01', { from: 8, to: 18 });
  expect((frame.to - frame.from) / HOUR).toBe(10);
  expect(frame.shiftMinutes).toBe(-60);
});

test('half an hour forward on Lord Howe Island, and a midnight that does not exist in Beirut', () => {
  expect(hoursOf('2026-10-04', WHOLE, zone('Australia/Lord_Howe')).shiftMinutes).toBe(30);
  const beirut = hoursOf('2027-03-28', WHOLE, zone('Asia/Beirut'));
  expect(beirut.hours[0]?.hour).toBe(1);
});

test('in any zone, days follow each other without a gap, and every hour mark is a full hour of that day', () => {
  const zones = [
    'America/Boise',
    'America/Phoenix',
    'Asia/Kolkata',
    'Europe/London',
    'Pacific/Apia',
    'America/St_Johns',
  ];
  fc.assert(
    fc.property(fc.constantFrom(...zones), fc.integer({ min: 0, max: 3650 }), (name, days) => {
      const [where, date] = [zone(name), addDays(day('2020-01-01'), days)];
      const [frame, next] = [dayFrame(date, where, WHOLE), dayFrame(addDays(date, 1), where, WHOLE)];
      expect(frame.from).toBe(startOfDay(date, where));
      expect(frame.to).toBe(next.from);
      for (const { at, hour } of frame.hours) {
        expect(dateIn(where, at)).toBe(date);
        expect(wallClock(at, where).time).toBe(`${String(hour).padStart(2, '0')}:00`);
      }
    }),
  );
});
