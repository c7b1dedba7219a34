import { apart, MONTH, monthNumber, RELATIVE_DAY, relativeDay, WEEKDAY, weekdayName } from './day-words.ts';

/** A day in a text: its date in figures or English, and the weekday that is said of it. */
export interface DateToken {
  /** `2026-11-28`, `Nov 28`, `today`, `tomorrow`, or empty where only a weekday is said. */
  readonly date: string;
  /** `Sat`, or empty. */
  readonly weekday: string;
  /** Which of two figures is the day was taken from the page's language only. */
  readonly guessed: boolean;
  readonly start: number;
  readonly end: number;
}

const DAY_FIGURES = String.raw`(?<day>\d{1,2})(?:st|nd|rd|th|er|º|\.)?`;
const YEAR = String.raw`(?:,? (?:of |de |del )?(?<year>(?:19|20)\d\d)(?!\d|,\d{3})|[ ,]+['’](?<short>\d\d)(?!\d))?`;
const FORMS: readonly RegExp[] = [
  // 2026-11-28, 2026/11/28, 2026.11.28
  /(?<![\d/.-])(?<year>20\d\d)([-/.])(?<month>\d{1,2})\2(?<day>\d{1,2})(?![\d/-])/gu,
  // 11/28/2026, 28.11.2026, 11-28-26
  /(?<![\d/.,$-])(?<first>\d{1,2})(?<mark>[/.-])(?<second>\d{1,2})\k<mark>(?<year>(?:20)?\d\d)(?![\d/-]|[.,]\d)/gu,
  // 28-NOV-26, 28-Nov-2026
  new RegExp(apart(`(?<day>\\d{1,2})-(?<name>${MONTH})-(?<year>(?:20)?\\d\\d)(?!\\d)`), 'giu'),
  // Nov 28, 2026; November 28th
  new RegExp(apart(`(?<name>${MONTH}) (?:the )?${DAY_FIGURES}(?![\\d:,]\\d|\\d)${YEAR}`), 'giu'),
  // 28 November 2026, 28th of November, 28 de noviembre de 2026, 1er décembre
  new RegExp(apart(`${DAY_FIGURES}[ -](?:of |de )?(?<name>${MONTH})(?:-(?<short2>\\d\\d)(?!\\d)|${YEAR})`), 'giu'),
  // 11/28, where a weekday or a time stands beside it
  /(?<![\d/.,$#-])(?<first>\d{1,2})(?<mark>\/)(?<second>\d{1,2})(?![\d/%-]|[.,]\d)/gu,
];
const RELATIVE = new RegExp(apart(RELATIVE_DAY), 'giu');
const WEEKDAYS = new RegExp(apart(`(?:${WEEKDAY})\\.?`), 'giu');
const DAY_FIRST = /^(?:es|fr|de|it|pt|nl|pl|sv|da|nb|no|ar|he|en-(?:GB|AU|NZ|IE|IN|ZA))\b/i;

/** Every day in a text, in its order. Two figures are read month first unless the page's language or the figures say otherwise. */
export function datesInText(text: string, language: string): readonly DateToken[] {
  const found: DateToken[] = [];
  const put = (at: number, whole: string, read: Pick<DateToken, 'date' | 'guessed'> | null) => {
    const end = at + whole.trimEnd().length;
    if (read !== null && !found.some((one) => at < one.end && one.start < end)) {
      found.push({ ...read, weekday: '', start: at, end });
    }
  };
  for (const form of FORMS) {
    for (const match of text.matchAll(form)) put(match.index, match[0], dateOf(match.groups ?? {}, language));
  }
  for (const match of text.matchAll(RELATIVE)) {
    put(match.index, match[0], { date: relativeDay(match[0]), guessed: false });
  }
  return withWeekdays(found, text, language).sort((a, b) => a.start - b.start);
}

type Groups = Readonly<Record<string, string | undefined>>;

function dateOf(groups: Groups, language: string): Pick<DateToken, 'date' | 'guessed'> | null {
  const { name, day, month, first, second, mark } = groups;
  const year = groups.year ?? groups.short ?? groups.short2;
  if (name !== undefined) return calendar(year, monthNumber(name), Number(day), false);
  if (month !== undefined) return calendar(year, Number(month), Number(day), false);
  const [one, two] = [Number(first), Number(second)];
  const byLanguage = DAY_FIRST.test(language.replace(/^(es|fr)-US$/i, 'en'));
  const dayFirst = one > 12 || mark === '.' || (byLanguage && two <= 12);
  const guessed = byLanguage && mark !== '.' && one <= 12 && two <= 12 && one !== two;
  return dayFirst ? calendar(year, two, one, guessed) : calendar(year, one, two, guessed);
}

const NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

function calendar(year: string | undefined, month: number, day: number, guessed: boolean) {
  if (month < 1 || month > 12 || day < 1 || day > 31) return null;
  if (year === undefined) return { date: `${NAMES[month - 1]} ${day}`, guessed };
  const full = year.length === 2 ? `20${year}` : year;
  return { date: `${full}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`, guessed };
}

/** A weekday beside a date belongs to it; one that stands alone is a day of its own. */
function withWeekdays(dates: readonly DateToken[], text: string, language: string): DateToken[] {
  const all = [...dates];
  for (const match of text.matchAll(WEEKDAYS)) {
    const weekday = weekdayName(match[0].replace(/\.$/, ''));
    const [start, end] = [match.index, match.index + match[0].length];
    if (weekday === '' || isOtherWord(match[0], text.slice(match.index + match[0].length), language)) continue;
    if (all.some((one) => start < one.end && one.start < end)) continue;
    const beside = all.findIndex(
      (one) =>
        one.weekday === '' &&
        ((one.start >= end && one.start - end <= 6 && IDLE.test(text.slice(end, one.start))) ||
          (start >= one.end && start - one.end <= 3 && IDLE.test(text.slice(one.end, start)))),
    );
    const date = all[beside];
    if (date === undefined) all.push({ date: '', weekday, guessed: false, start, end });
    else all[beside] = { ...date, weekday, start: Math.min(start, date.start), end: Math.max(end, date.end) };
  }
  return all;
}

/** Short names of days are words of other languages too: `40,000 mi,` is no Wednesday. */
function isOtherWord(word: string, after: string, language: string): boolean {
  const bare = word.replace(/\.$/, '');
  if (bare.length === 2) return !/^de\b/i.test(language);
  if (bare.length > 3 || /^(?:mon|tue|wed|thu|fri|sat|sun)$/i.test(bare)) return false;
  return !/^(?:fr|es|de)\b/i.test(language) && !/^\.? ?\d/.test(after);
}

const IDLE = /^[\s,.()|·•–-]*(?:the |le |den |el |dem )?$/i;
