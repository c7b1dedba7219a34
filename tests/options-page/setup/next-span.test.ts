import { expect, test } from 'vitest';
import { nextSpan } from '../../../options-page/setup/busy/next-span.ts';
import { type RushHours, rushHoursSchema } from '../../../src/domain/setup/store.ts';

const hours = (from: string, to: string): RushHours => rushHoursSchema.parse({ weekday: 'sat', from, to });

test('the first hours of a day are ten to five', () => {
  expect(nextSpan([])).toEqual({ from: '10:00', to: '17:00' });
});

test('more hours come behind the last ones, wherever those stand in the list', () => {
  expect(nextSpan([hours('14:00', '17:00'), hours('09:00', '11:00')])).toEqual({ from: '18:00', to: '21:00' });
});

test('late in the day they are shorter and still end after they begin', () => {
  for (const end of ['20:30', '22:45', '23:30', '23:59']) {
    const span = nextSpan([hours('10:00', end)]);
    expect(rushHoursSchema.safeParse({ weekday: 'sat', ...span }).error).toBeUndefined();
  }
});
