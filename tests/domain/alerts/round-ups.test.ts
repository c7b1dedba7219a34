import { describe, expect, test } from 'vitest';
import type { LocalTime } from '../../../src/domain/time/local-date.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { BOISE, bareRules, clockAt, type Invention, inventedLot, planFor } from './invented-lots.ts';

const SATURDAY = '2026-11-28';
const FRIDAY = '2026-11-27';
const rules = bareRules({ leadMinutes: [1], digestAt: '19:00' as LocalTime, beforeRushMinutes: 30 });
const lot = (id: string, time: string, more: Invention = {}) => inventedLot(id, clockAt(SATURDAY, time), more);
/** Three in the rush, one of them placed, one near it, one clear of it. */
const LOTS = [
  lot('a', '10:40'),
  lot('b', '11:30', { placed: true }),
  lot('c', '12:05'),
  lot('d', '13:20'),
  lot('e', '16:00'),
];
const plan = (date: string, time: string, shown: string[] = [], lots = LOTS) =>
  planFor(lots, clockAt(date, time), { rules, shown });

describe('the evening before', () => {
  test('counts what closes in the rush and what is left to place, and lists it', () => {
    expect(plan(FRIDAY, '18:59')).toEqual({ due: [], next: clockAt(FRIDAY, '19:00') });
    const [digest] = plan(FRIDAY, '19:00').due;
    expect(digest).toMatchObject({
      title: '3 of tomorrow’s 5 close in busy hours, 1 near them; 3 have no proxy yet',
      keys: [`digest ${SATURDAY}`],
      loudness: 'loud',
      route: '#/lots',
    });
    expect(digest?.body.split('\n')).toEqual([
      '10:40 AM Car a. Stop at $9,725.',
      '12:05 PM Car c. Stop at $9,725.',
      '1:20 PM Car d. Stop at $9,725.',
    ]);
  });

  test('comes softly when everything is placed, in other hands or done', () => {
    const settled = [lot('a', '10:40', { placed: true }), lot('b', '11:30', { handedTo: 'The closer' })];
    expect(plan(FRIDAY, '19:00', [], settled).due).toMatchObject([
      { title: '2 of tomorrow’s 2 close in busy hours; all proxies are placed', loudness: 'quiet' },
    ]);
    expect(plan(FRIDAY, '19:00', [], [lot('a', '10:40', { done: true })]).due).toEqual([]);
  });

  test('does not come before a day on which nothing closes in the rush or near it', () => {
    expect(plan(FRIDAY, '19:00', [], [lot('e', '16:00')]).due).toEqual([]);
  });

  test('comes late and labeled late, and not at all once the reminder before the rush is due', () => {
    expect(plan(SATURDAY, '08:00').due[0]?.title).toBe(
      'Late by 13 h: 3 of today’s 5 close in busy hours, 1 near them; 3 have no proxy yet',
    );
    expect(plan(SATURDAY, '09:30').due.map(({ keys }) => keys[0])).toEqual([`rush ${clockAt(SATURDAY, '10:00')}`]);
  });

  test('is not late for lots that came in after it was due', () => {
    const since = clockAt(FRIDAY, '21:00');
    expect(plan(FRIDAY, '21:00', [], [lot('a', '10:40', { since })]).due[0]?.title).toBe(
      '1 of tomorrow’s 1 closes in busy hours; it has no proxy yet',
    );
  });

  test('is once, however often the plan is made', () => {
    expect(plan(FRIDAY, '20:00', [`digest ${SATURDAY}`]).due).toEqual([]);
  });
});

describe('before the rush', () => {
  test('says what closes in it and near it, and what has no proxy', () => {
    const [reminder] = plan(SATURDAY, '09:30', [`digest ${SATURDAY}`]).due;
    expect(reminder).toMatchObject({
      title: 'Busy hours begin in 30 min: 4 lots close in or near them; 3 have no proxy yet',
      route: '#/now',
    });
  });

  test('still comes while lots close in it, and not after the last', () => {
    expect(plan(SATURDAY, '11:00').due.map(({ title }) => title)).toContain(
      'Late by 1 h 30 min: Busy hours are on: 3 lots close in or near them; 2 have no proxy yet',
    );
    expect(plan(SATURDAY, '13:21').due.some(({ about }) => about.startsWith('rush'))).toBe(false);
  });
});

test('a store that moves to another zone is told by its new clock', () => {
  const moved = zone('America/Chicago');
  // Its rush now begins an hour earlier, so other lots are in it.
  const { next } = planFor(LOTS, clockAt(FRIDAY, '12:00'), { rules, zone: moved });
  expect(next).toBe(clockAt(FRIDAY, '19:00', moved));
  expect(planFor(LOTS, clockAt(FRIDAY, '19:00', moved), { rules, zone: moved }).due[0]?.title).toBe(
    '2 of tomorrow’s 5 close in busy hours, 1 near them; 2 have no proxy yet',
  );
});

test('the evening before keeps its time of day across the nights in which the clocks change', () => {
  for (const [day, eve] of [
    ['2027-03-13', '2027-03-12'],
    ['2026-10-31', '2026-10-30'],
  ] as const) {
    const lots = [inventedLot('a', clockAt(day, '11:00'))];
    expect(planFor(lots, clockAt(eve, '12:00'), { rules }).next).toBe(clockAt(eve, '19:00', BOISE));
    expect(planFor(lots, clockAt(eve, '19:00') + MINUTE, { rules }).due).toHaveLength(1);
  }
});
