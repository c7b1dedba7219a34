import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rushCalendar } from '../../../src/domain/rush/rush-bands.ts';
import { rushSchema } from '../../../src/domain/setup/store.ts';
import { startOfDay } from '../../../src/domain/time/calendar-day.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../../src/domain/time/local-date.ts';
import { resolveWallTime } from '../../../src/domain/time/resolve-wall-time.ts';
import { sayClock } from '../../../src/domain/time/say-time.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const BOISE = zone('America/Boise');
const rush = rushSchema.parse({
  weekly: [
    { weekday: 'sat', from: '10:00', to: '13:00' },
    { weekday: 'sat', from: '15:00', to: '17:00' },
    { weekday: 'sun', from: '01:30', to: '02:30' },
  ],
  exceptions: [
    { date: '2026-12-26', hours: [] },
    { date: '2026-12-24', note: 'Holiday sale', hours: [{ from: '09:00', to: '12:00' }] },
  ],
});
const calendar = rushCalendar(rush, BOISE, 30);
const date = (text: string) => text as LocalDate;
const at = (day: string, time: string, place = BOISE): Instant =>
  resolveWallTime({ date: date(day), time: time as LocalTime }, place).earliest;
const hours = (day: string, from = calendar) =>
  from.bandsOn(date(day)).map((band) => `${sayClock(band.from, BOISE)} to ${sayClock(band.to, BOISE)}`);

describe('busy hours', () => {
  test('are those of the weekday, in store time', () => {
    expect(hours('2026-11-28')).toEqual(['10:00 AM to 1:00 PM', '3:00 PM to 5:00 PM']);
    expect(hours('2026-11-27')).toEqual([]);
  });

  test('give way to a date of its own, with other hours or none', () => {
    expect(hours('2026-12-26')).toEqual([]);
    expect(hours('2026-12-24')).toEqual(['9:00 AM to 12:00 PM']);
    expect(calendar.bandsOn(date('2026-12-24'))[0]?.note).toBe('Holiday sale');
  });

  test('that touch or overlap are one stretch', () => {
    const weekly = [
      { weekday: 'sat', from: '12:00', to: '15:00' },
      { weekday: 'sat', from: '10:00', to: '13:00' },
      { weekday: 'sat', from: '15:00', to: '16:00' },
      { weekday: 'sat', from: '10:30', to: '11:00' },
    ];
    expect(hours('2026-11-28', rushCalendar(rushSchema.parse({ weekly }), BOISE, 30))).toEqual(['10:00 AM to 4:00 PM']);
  });

  test('reach as far as either reading where the clock skips or repeats an end of them', () => {
    // 2026-03-08: 01:30 to a skipped 02:30. 2026-11-01: a repeated 01:30 to 02:30.
    const lengths = ['2026-03-08', '2026-11-01', '2026-11-08'].map((day) =>
      calendar.bandsOn(date(day)).map((band) => (band.to - band.from) / 60_000),
    );
    expect(lengths).toEqual([[60], [120], [60]]);
  });

  test('of a week are found by the moments they reach into', () => {
    const from = startOfDay(date('2026-11-23'), BOISE);
    const to = startOfDay(date('2026-11-30'), BOISE);
    expect(calendar.bandsBetween(from, to).map((band) => band.date)).toEqual([
      '2026-11-28',
      '2026-11-28',
      '2026-11-29',
    ]);
    expect(calendar.bandsBetween(at('2026-11-28', '12:00'), at('2026-11-28', '12:30'))).toHaveLength(1);
    expect(calendar.bandsBetween(at('2026-11-28', '13:00'), at('2026-11-28', '15:00'))).toEqual([]);
  });
});

describe('a close', () => {
  test.each([
    ['09:29', 'clear'],
    ['09:30', 'near'],
    ['09:59', 'near'],
    ['10:00', 'in'],
    ['12:59', 'in'],
    ['13:00', 'near'],
    ['13:30', 'near'],
    ['13:31', 'clear'],
    ['14:45', 'near'],
    ['16:00', 'in'],
  ])('at %s of a busy Saturday is %s', (time, kind) => {
    expect(calendar.of(at('2026-11-28', time)).kind).toBe(kind);
  });

  test('names the stretch it is in or nearest to', () => {
    expect(calendar.of(at('2026-11-28', '14:45')).band?.from).toBe(at('2026-11-28', '15:00'));
    expect(calendar.of(at('2026-11-28', '13:10')).band?.from).toBe(at('2026-11-28', '10:00'));
    expect(calendar.of(at('2026-11-27', '12:00'))).toEqual({ kind: 'clear' });
  });

  test('may be near hours on the other side of midnight', () => {
    const early = rushCalendar(
      rushSchema.parse({ weekly: [{ weekday: 'sun', from: '00:10', to: '01:00' }] }),
      BOISE,
      30,
    );
    expect(early.of(at('2026-11-28', '23:45')).kind).toBe('near');
  });

  test('is in the busy hours exactly when its store clock says so, on any day of any year', () => {
    const saturday = rushCalendar(
      rushSchema.parse({ weekly: [{ weekday: 'sat', from: '10:00', to: '17:00' }] }),
      BOISE,
      0,
    );
    const weekday = new Intl.DateTimeFormat('en-US', { timeZone: BOISE, weekday: 'short' });
    const hour = new Intl.DateTimeFormat('en-US', { timeZone: BOISE, hour: 'numeric', hourCycle: 'h23' });
    fc.assert(
      fc.property(fc.integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2035, 0, 1) }), (moment) => {
        const busy =
          weekday.format(moment) === 'Sat' && Number(hour.format(moment)) >= 10 && Number(hour.format(moment)) < 17;
        expect(saturday.of(instant(moment)).kind === 'in').toBe(busy);
      }),
    );
  });
});
