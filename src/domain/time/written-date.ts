import * as chrono from 'chrono-node/en';
import { type Outcome, ok, refuse } from '../outcome.ts';
import { addDays } from './calendar-day.ts';
import { type LocalDate, type LocalTime, localDateSchema } from './local-date.ts';
import { dayName } from './say-time.ts';
import { weekdayOf } from './wall-clock.ts';
import { WEEKDAYS, type Weekday } from './weekdays.ts';

const WEEKDAY =
  /\b(?:(this|coming|next|last) )?(mon|tue|wed|thu|fri|sat|sun)(?:s|sday|nesday|rs|rsday|day|urday)?\b\.?/gi;
/** Words that stand around a closing time and change nothing in it. */
const IDLE =
  /\b(?:bidding|bids?|auction|sale|lots?|closes?|closed|closing|ends?|ended|ending|times?|dates?|at|on|by|the|until|till|of|and|scheduled|for|is|due|hrs|o'clock|sharp|t)\b|[^\p{L}\p{N}]/giu;

/**
 * The date in a text whose time of day has been taken out. Without one, the next day on which that time is still to come;
 * a weekday alone likewise. Month and day in figures are read month first, unless the first is above 12. A date without a
 * year is the one to come, or one up to a month past. A weekday that contradicts its date is refused.
 * @param now.date today at the place the time is said of, and now.time its time of day
 */
export function writtenDate(
  text: string,
  time: LocalTime,
  now: { readonly date: LocalDate; readonly time: LocalTime },
): Outcome<LocalDate> {
  const weekdays = [...text.matchAll(WEEKDAY)];
  const [named, another] = weekdays;
  if (another !== undefined && another[2]?.toLowerCase() !== named?.[2]?.toLowerCase())
    return refuse(
      'two-dates',
      `There is more than one day here (${named?.[0]} and ${another[0]}). Keep the closing day.`,
    );
  const weekday = WEEKDAYS.find((day) => day === named?.[2]?.toLowerCase());
  const rest = text.replace(WEEKDAY, ' ').replace(/\s+/g, ' ').trim();
  const first = now.time <= time ? now.date : addDays(now.date, 1);
  const nothingElse = rest.replace(IDLE, '') === '';
  if (nothingElse && weekday === undefined) return ok(first);
  if (nothingElse && weekday !== undefined) return onWeekday(weekday, named?.[0] ?? '', first);
  const dates = inFigures(rest, now.date) ?? inWords(rest, now.date);
  if (!dates.ok) return dates;
  return fitting(dates.value, weekday);
}

function onWeekday(weekday: Weekday, asWritten: string, first: LocalDate): Outcome<LocalDate> {
  const coming = [0, 1, 2, 3, 4, 5, 6].map((days) => addDays(first, days)).find((date) => weekdayOf(date) === weekday);
  const date = coming ?? first;
  if (/^(?:next|last)/i.test(asWritten))
    return refuse('which-week', `“${asWritten}” can mean two days. Write the date, such as ${date}.`);
  return ok(date);
}

/** Lets a weekday have its say. */
function fitting(dates: readonly LocalDate[], weekday: Weekday | undefined): Outcome<LocalDate> {
  const [first] = dates;
  if (first === undefined) return refuse('no-such-date', 'There is no such day. Check the date, and write its year.');
  const agreeing = dates.find((date) => weekday === undefined || weekdayOf(date) === weekday);
  if (agreeing !== undefined) return ok(agreeing);
  return refuse(
    'weekday-differs',
    `${first} is a ${dayName(weekdayOf(first))}, not a ${dayName(weekday ?? weekdayOf(first))}: one of the two is wrong.`,
  );
}

/** 2026-11-28, 2026/11/28, 20261128, 11/28/2026, 11-28-26, 28.11.2026, 11/28. Null when there are no such figures. */
function inFigures(text: string, today: LocalDate): Outcome<readonly LocalDate[]> | null {
  const match =
    /(?<!\d)(?:(\d{4})([-/.])(\d{1,2})\2(\d{1,2})|(\d{4})(\d\d)(\d\d)|(\d{1,2})([-/.])(\d{1,2})(?:\9(\d{4}|\d\d))?)(?!\d)/.exec(
      text,
    );
  if (match === null) return null;
  const left = text.replace(match[0], ' ');
  if (left.replace(IDLE, '') !== '') return notUnderstood(left);
  const year = match[1] ?? match[5] ?? match[11];
  if (match[8] === undefined)
    return ok(calendarDates(year, match[3] ?? match[6] ?? '', match[4] ?? match[7] ?? '', today));
  const [one, two] = [match[8], match[10] ?? ''];
  return ok(Number(one) > 12 ? calendarDates(year, two, one, today) : calendarDates(year, one, two, today));
}

/** The date, if there is one; without a year the one that is at most a month past or else ahead. */
function calendarDates(year: string | undefined, month: string, day: string, today: LocalDate): readonly LocalDate[] {
  const thisYear = Number(today.slice(0, 4));
  const years = year === undefined ? [thisYear - 1, thisYear, thisYear + 1] : [year.length === 2 ? `20${year}` : year];
  const near = (date: LocalDate) => year !== undefined || (date >= addDays(today, -30) && date < addDays(today, 335));
  return years
    .map((one) => `${one}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`)
    .flatMap((text) => {
      const date = localDateSchema.safeParse(text);
      return date.success && near(date.data) ? [date.data] : [];
    });
}

/** "Nov 28", "28 November 2026", "tomorrow", "day after tomorrow", "in 3 days": found by the natural-language library. */
function inWords(text: string, today: LocalDate): Outcome<readonly LocalDate[]> {
  const after = /\bday after tomorrow\b/i;
  if (after.test(text))
    return text.replace(after, '').replace(IDLE, '') === '' ? ok([addDays(today, 2)]) : notUnderstood(text);
  const reference = { instant: new Date(`${today}T12:00Z`), timezone: 0 };
  const [found, another] = chrono.casual.parse(text.replace(/[()]/g, ' '), reference, { forwardDate: true });
  if (found === undefined) return notUnderstood(text);
  const left = text.replace(/[()]/g, ' ').replace(found.text, ' ').replace(IDLE, '');
  if (another !== undefined || (found.end !== null && found.end !== undefined) || left !== '')
    return notUnderstood(text);
  const { start } = found;
  // The library knows zones that ours does not; read past them, the time would be another.
  if (start.isCertain('timezoneOffset')) return unknownZone(found.text);
  if (!start.isCertain('day') || !start.isCertain('month')) return notUnderstood(text);
  const [month, day] = [String(start.get('month')), String(start.get('day'))];
  return ok(calendarDates(start.isCertain('year') ? String(start.get('year')) : undefined, month, day, today));
}

const unknownZone = (text: string) =>
  refuse(
    'unknown-zone',
    `The zone in “${text.trim()}” is not known here. Write it as a place, such as Asia/Kolkata, or as an offset, such as +05:30.`,
  );

const notUnderstood = (text: string) =>
  refuse('not-a-date', `“${text.trim()}” was not understood as a day. Write it as 2026-11-28 or Nov 28.`);
