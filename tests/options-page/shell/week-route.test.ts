import { expect, test } from 'vitest';
import { readRoute } from '../../../options-page/shell/route.ts';

test('the week, another week, a day, and a day from some time on', () => {
  expect(readRoute('#/week')).toEqual({ screen: 'week', show: 'week', date: null, at: null });
  expect(readRoute('#/week/of/2026-11-28')).toEqual({ screen: 'week', show: 'week', date: '2026-11-28', at: null });
  expect(readRoute('#/week/2026-11-28')).toEqual({ screen: 'week', show: 'day', date: '2026-11-28', at: null });
  expect(readRoute('#/week/2026-11-28/15:00')).toEqual({
    screen: 'week',
    show: 'day',
    date: '2026-11-28',
    at: '15:00',
  });
});

test('a day that does not exist is no page, and a time that does not exist begins the day', () => {
  for (const hash of ['#/week/2026-02-30', '#/week/of/', '#/week/someday', '#/week/1969-12-31'])
    expect(readRoute(hash)).toEqual({ screen: 'unknown', hash });
  expect(readRoute('#/week/2026-11-28/25:00')).toMatchObject({ show: 'day', at: null });
});
