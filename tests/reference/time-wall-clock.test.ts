import { describe, expect, test } from 'vitest';
import { addDaysIn, startOfDay } from '../../src/domain/time/calendar-day.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../src/domain/time/local-date.ts';
import { resolveWallTime } from '../../src/domain/time/resolve-wall-time.ts';
import { wallClock } from '../../src/domain/time/wall-clock.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { zoneOffset } from '../../src/domain/time/zone-offset.ts';

const utc = (text: string) => instant(Date.parse(`${text.replace(' ', 'T')}Z`));
const iso = (at: number) => new Date(at).toISOString().slice(0, 16);
const shown = (at: string, place: string) => {
  const { date, time } = wallClock(utc(at), zone(`America/${place}`));
  return `${date} ${time}`;
};

// Computed independently: two Temporal implementations and zdump agree on every cell.
const COLUMNS = ['New_York', 'Chicago', 'Denver', 'Phoenix', 'Los_Angeles', 'Anchorage', 'Puerto_Rico'] as const;
const ROWS = [
  ['2026-07-15 18:00', '14:00', '13:00', '12:00', '11:00', '11:00', '10:00', '14:00'],
  ['2026-12-15 18:00', '13:00', '12:00', '11:00', '11:00', '10:00', '09:00', '14:00'],
  ['2026-03-08 09:30', '05:30', '04:30', '03:30', '02:30', '01:30', '00:30', '05:30'],
  ['2026-11-01 06:30', '01:30', '01:30', '00:30', '23:30', '23:30', '22:30', '02:30'],
] as const;

describe('the clock on the wall', () => {
  for (const [at, ...times] of ROWS)
    test(`at ${at} UTC shows what it does across the country (computed independently)`, () => {
      COLUMNS.forEach((place, i) => {
        const date = at === '2026-11-01 06:30' && (times[i] ?? '') > '22' ? '2026-10-31' : at.slice(0, 10);
        expect([place, shown(at, place)]).toEqual([place, `${date} ${times[i]}`]);
      });
    });

  test('in Honolulu never changes (computed independently)', () => {
    const honolulu = zone('Pacific/Honolulu');
    const times = ROWS.map(([at]) => `${wallClock(utc(at), honolulu).date} ${wallClock(utc(at), honolulu).time}`);
    expect(times).toEqual(['2026-07-15 08:00', '2026-12-15 08:00', '2026-03-07 23:30', '2026-10-31 20:30']);
  });

  // The second Sunday of March and the first of November, 02:00 on the wall (tz database, rule set "US").
  test.each([
    ['New_York', '2026-03-08 07:00', '2026-11-01 06:00', '2027-03-14 07:00', '2027-11-07 06:00'],
    ['Chicago', '2026-03-08 08:00', '2026-11-01 07:00', '2027-03-14 08:00', '2027-11-07 07:00'],
    ['Denver', '2026-03-08 09:00', '2026-11-01 08:00', '2027-03-14 09:00', '2027-11-07 08:00'],
    ['Los_Angeles', '2026-03-08 10:00', '2026-11-01 09:00', '2027-03-14 10:00', '2027-11-07 09:00'],
  ])('in %s jumps by an hour at exactly the published moments (tz database, rule set "US")', (place, ...changes) => {
    changes.forEach((change, i) => {
      const at = utc(change);
      const jump = zoneOffset(at, zone(`America/${place}`)) - zoneOffset(instant(at - 1), zone(`America/${place}`));
      expect(jump).toBe(i % 2 === 0 ? 3_600_000 : -3_600_000);
    });
  });

  test('keeps to its zone: Phoenix is seven hours behind on every first of a month until 2035 (tz database)', () => {
    for (let month = 0; month < 240; month += 1)
      expect(zoneOffset(instant(Date.UTC(2015, month, 1)), zone('America/Phoenix'))).toBe(-7 * 3_600_000);
  });
});

describe('a wall time', () => {
  // Columns earlier and later of the reference: Temporal's modes of those names (computed independently).
  test.each([
    ['2026-03-08', '02:30', 'New_York', 'gap', '2026-03-08T06:30', '2026-03-08T07:30'],
    ['2026-11-01', '01:30', 'New_York', 'overlap', '2026-11-01T05:30', '2026-11-01T06:30'],
    ['2026-03-08', '02:30', 'Chicago', 'gap', '2026-03-08T07:30', '2026-03-08T08:30'],
    ['2026-11-01', '01:30', 'Los_Angeles', 'overlap', '2026-11-01T08:30', '2026-11-01T09:30'],
    ['2026-03-08', '02:30', 'Phoenix', 'unique', '2026-03-08T09:30', '2026-03-08T09:30'],
    ['2026-03-08', '01:59', 'New_York', 'unique', '2026-03-08T06:59', '2026-03-08T06:59'],
    ['2026-03-08', '03:00', 'New_York', 'unique', '2026-03-08T07:00', '2026-03-08T07:00'],
    ['2026-11-01', '00:59', 'New_York', 'unique', '2026-11-01T04:59', '2026-11-01T04:59'],
    ['2026-11-01', '02:00', 'New_York', 'unique', '2026-11-01T07:00', '2026-11-01T07:00'],
    ['2026-03-08', '01:30', 'Denver', 'unique', '2026-03-08T08:30', '2026-03-08T08:30'],
    ['2026-03-08', '03:30', 'Denver', 'unique', '2026-03-08T09:30', '2026-03-08T09:30'],
    ['2026-11-01', '02:30', 'Denver', 'unique', '2026-11-01T09:30', '2026-11-01T09:30'],
    ['2026-07-15', '12:00', 'Denver', 'unique', '2026-07-15T18:00', '2026-07-15T18:00'],
    ['2026-12-15', '12:00', 'Denver', 'unique', '2026-12-15T19:00', '2026-12-15T19:00'],
  ])('%s %s in %s is %s (computed independently)', (date, time, place, kind, earliest, latest) => {
    const resolved = resolveWallTime({ date: date as LocalDate, time: time as LocalTime }, zone(`America/${place}`));
    expect([resolved.kind, iso(resolved.earliest), iso(resolved.latest)]).toEqual([kind, earliest, latest]);
  });
});

describe('days', () => {
  const newYork = zone('America/New_York');
  const hours = (date: string, next: string, place = newYork) =>
    (startOfDay(next as LocalDate, place) - startOfDay(date as LocalDate, place)) / 3_600_000;

  test('have 23, 25 and 24 hours where the clock changes or does not (computed independently)', () => {
    expect(hours('2026-03-08', '2026-03-09')).toBe(23);
    expect(hours('2026-11-01', '2026-11-02')).toBe(25);
    expect(hours('2026-03-08', '2026-03-09', zone('America/Phoenix'))).toBe(24);
  });

  test('are added on the wall, not as 24 hours (computed independently)', () => {
    const october = resolveWallTime({ date: '2026-10-31' as LocalDate, time: '22:00' as LocalTime }, newYork).earliest;
    const march = resolveWallTime({ date: '2026-03-07' as LocalDate, time: '22:00' as LocalTime }, newYork).earliest;
    expect(wallClock(addDaysIn(newYork, october, 1), newYork)).toMatchObject({ date: '2026-11-01', time: '22:00' });
    expect(wallClock(addDaysIn(newYork, march, 1), newYork)).toMatchObject({ date: '2026-03-08', time: '22:00' });
    expect(wallClock(instant(october + 86_400_000), newYork).time).toBe('21:00');
    expect(wallClock(instant(march + 86_400_000), newYork).time).toBe('23:00');
  });
});
