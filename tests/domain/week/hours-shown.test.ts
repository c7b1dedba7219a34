import { expect, test } from 'vitest';
import type { LocalTime } from '../../../src/domain/time/local-date.ts';
import { hoursShown } from '../../../src/domain/week/hours-shown.ts';

const span = (from: string, last = from) => ({ from: from as LocalTime, last: last as LocalTime });

test('a working day is shown even when nothing closes', () => {
  expect(hoursShown([])).toEqual({ from: 8, to: 18 });
});

test('what lies outside it is shown with an hour around it', () => {
  expect(hoursShown([span('05:41'), span('19:30')])).toEqual({ from: 4, to: 21 });
});

test('busy hours that end on the hour do not reach into it', () => {
  expect(hoursShown([span('10:00', '16:59')])).toEqual({ from: 8, to: 18 });
});

test('the day ends at midnight, whatever happens just before it', () => {
  expect(hoursShown([span('00:10'), span('23:59')])).toEqual({ from: 0, to: 24 });
});

test('a call takes only the hour it is in', () => {
  const calls = ['06:40', '21:30'] as LocalTime[];
  expect(hoursShown([], calls)).toEqual({ from: 6, to: 22 });
});
