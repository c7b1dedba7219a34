import { type Outcome, ok, refuse } from '../outcome.ts';
import type { LocalTime } from './local-date.ts';

/** A time of day found in a text, and the text without it. */
export interface WrittenTime {
  readonly time: LocalTime;
  readonly second: number;
  readonly rest: string;
}

const TIME =
  /(?<![\d:.])(?:(\d{1,2})(?:[:.](\d\d))?(?::(\d\d)(?:\.\d{1,9})?)? ?([ap])(?:m|\.m\.?|\. m\.?)?(?![a-z])|(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,]\d{1,9})?)?(?![\d:])|\bnoon\b)/gi;

/**
 * The one time of day in a text. Twelve hours need AM or PM, unless the hour is written with two digits or stands in a
 * table's date ("11/28/2026 9:05"), where it is on the 24-hour clock; a guess would be wrong by half a day.
 */
export function writtenTime(text: string): Outcome<WrittenTime> {
  if (/\bmidnight\b/i.test(text))
    return refuse('midnight', 'Midnight can begin or end the day. Write 12:01 AM with the date, or 11:59 PM.');
  const found = [...text.matchAll(TIME)];
  const [match, second] = found;
  if (match === undefined) return refuse('no-time', 'The time of day is missing. Add it, such as 2:05 PM.');
  if (second !== undefined)
    return refuse(
      'two-times',
      `There is more than one time here (${match[0].trim()} and ${second[0].trim()}). Keep the one at which it closes.`,
    );
  const rest = text.replace(match[0], ' ');
  if (/^noon$/i.test(match[0])) return ok({ time: '12:00' as LocalTime, second: 0, rest });
  const [hourText = '', minuteText = '0', secondText = '0'] =
    match[4] === undefined ? match.slice(5, 8) : match.slice(1, 4);
  const [hour, minute, seconds] = [hourText, minuteText ?? '0', secondText ?? '0'].map(Number) as [
    number,
    number,
    number,
  ];
  const half = match[4]?.toLowerCase();
  // "13:05 PM" is a slip in one of its halves, but both say the same time; "0:30 AM" likewise.
  const onTheClock = half === undefined || hour > 12 || hour === 0 ? hour : (hour % 12) + (half === 'p' ? 12 : 0);
  if (onTheClock > 23 || minute > 59 || seconds > 59 || (half === 'a' && hour > 12))
    return refuse('not-a-time', `There is no such time of day: ${match[0].trim()}.`);
  if (half === undefined && hour >= 1 && hour <= 11 && hourText.length === 1 && !/\d[/.-]\d{1,2}[/.-]\d/.test(rest))
    return refuse('morning-or-afternoon', `Is ${match[0].trim()} in the morning or the afternoon? Add AM or PM.`);
  const time = `${String(onTheClock).padStart(2, '0')}:${String(minute).padStart(2, '0')}` as LocalTime;
  return ok({ time, second: seconds, rest });
}
