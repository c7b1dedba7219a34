import { expect, test } from 'vitest';
import type { Deadline } from '../../../src/domain/alerts/deadline.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { HOUR, MINUTE } from '../../../src/domain/time/units.ts';
import { inventedLot, planFor } from './invented-lots.ts';

const T0 = 1_800_000_000_000;
const deadline = (key: string, at: number, more: Partial<Deadline> = {}): Deadline => ({
  key,
  at: instant(at),
  leads: [24 * 60, 60],
  title: 'Dispute window, Car a',
  body: 'Say what is wrong, with a picture.',
  route: `#/disputes/${key}`,
  ...more,
});
const plan = (deadlines: Deadline[], now: number, shown: string[] = []) => planFor([], now, { deadlines, shown });

test('a deadline is called at its leads, and each is said once', () => {
  const window = deadline('d1', T0 + 30 * HOUR);
  expect(plan([window], T0)).toEqual({ due: [], next: T0 + 6 * HOUR });
  const { due, next } = plan([window], T0 + 6 * HOUR);
  expect(due).toMatchObject([
    { title: 'Dispute window, Car a: due in 24 h', route: '#/disputes/d1', loudness: 'loud', about: 'deadline-d1' },
  ]);
  expect(next).toBe(T0 + 29 * HOUR);
  expect(plan([window], T0 + 7 * HOUR, [...(due[0]?.keys ?? [])]).due).toEqual([]);
});

test('one that passed while nobody could be told is said, late', () => {
  expect(plan([deadline('d1', T0)], T0 + 3 * HOUR).due).toMatchObject([
    { title: 'Late by 4 h: Dispute window, Car a: was due 3 h ago' },
  ]);
});

test('one that moves is called anew', () => {
  const keys = plan([deadline('d1', T0)], T0 - HOUR).due.flatMap((alert) => alert.keys);
  expect(plan([deadline('d1', T0 + MINUTE)], T0, keys).due).toHaveLength(1);
});

test('many at once are one notice, that of the first to end', () => {
  const many = Array.from({ length: 9 }, (_, i) => deadline(`d${i}`, T0 + (i + 1) * 10 * MINUTE));
  const { due } = plan(many, T0 + 5 * MINUTE);
  expect(due).toMatchObject([{ title: '9 deadlines; the first due in 5 min', route: '#/disputes/d0' }]);
  expect(due[0]?.keys).toHaveLength(15);
});

test('a lot that closes now comes before a deadline', () => {
  const lots = [inventedLot('a', T0 + 10 * MINUTE)];
  const { due } = planFor(lots, T0, { deadlines: [deadline('d1', T0 + 5 * MINUTE)] });
  expect(due.map(({ about }) => about)).toEqual(['lot-a', 'deadline-d1']);
});
