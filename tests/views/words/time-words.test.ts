import { expect, test } from 'vitest';
import type { LocalDate, LocalTime } from '../../../src/domain/time/local-date.ts';
import { dateInWords, dayInWords } from '../../../src/views/words/date-words.ts';
import { minutesInWords, timeInWords } from '../../../src/views/words/time-of-day-words.ts';

test('a time of day is written as people say it', () => {
  const words = ['00:00', '09:05', '12:00', '12:30', '16:00', '23:59'].map((time) => timeInWords(time as LocalTime));
  expect(words).toEqual(['12 AM', '9:05 AM', 'noon', '12:30 PM', '4 PM', '11:59 PM']);
});

test('minutes before or after the day say which day they are on', () => {
  expect(minutesInWords(-60)).toBe('11 PM the day before');
  expect(minutesInWords(24 * 60 + 30)).toBe('12:30 AM the day after');
});

test('a date is the same date whatever zone the computer is in', () => {
  expect(dateInWords('2027-03-01' as LocalDate)).toBe('Mar 1, 2027');
  expect(dayInWords('2026-11-26' as LocalDate)).toBe('Thursday, November 26, 2026');
});
