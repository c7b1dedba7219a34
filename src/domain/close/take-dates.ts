import { addDays } from '../time/calendar-day.ts';
import type { LocalDate } from '../time/local-date.ts';
import { MONTH, monthOf, WEEKDAY, weekdayOfWord } from './names.ts';
import type { Token } from './token.ts';
import type { Put } from './zone-words.ts';

const NTH = '(?:st|nd|rd|th)';
const YEAR = String.raw`(?:19|20)\d\d(?!\d|:| ?(?:hrs?|hours|h|z)(?![a-z]))`;

const plain = (year: number | null, month: number, day: number, named = true): Token => ({
  kind: 'date',
  date: { form: 'plain', year, month, day, named },
});

const yearOf = (text: string | undefined): number | null =>
  text === undefined ? null : text.length === 4 ? Number(text) : 2000 + Number(text.replace("'", ''));

type Rule = readonly [pattern: RegExp, read: (found: readonly (string | undefined)[]) => readonly Token[] | null];
const number = (text: string | undefined): number => Number(text ?? '0');
const JOIN: Token = { kind: 'join' };

const MONTH_DAY: Rule = [
  new RegExp(
    String.raw`(?<![a-z]|\d{1,2}${NTH}?(?: of)?[ -])(${MONTH})\.?[ -]?(\d{1,2})${NTH}?(?!\d|:|\.\d| ?[ap]m| ?h(?:rs?|ours)?(?![a-z]))(?:,?[ -]?(${YEAR}|'\d\d))?`,
    'g',
  ),
  ([, month = '', day, year]) => [plain(yearOf(year), monthOf(month), number(day))],
];

/** Dates in every form, in the order in which they are looked for: the more that is said, the earlier. */
const RULES: readonly Rule[] = [
  // 281900ZNOV26: day, time and UTC in one word.
  [
    new RegExp(String.raw`(?<!\d)(\d\d)(\d\d)(\d\d)z ?(${MONTH}|[a-z]{3}(?=\d)) ?(\d{4}|\d\d)(?!\d)`, 'g'),
    ([, day, hour, minute, month = '', year]) => [
      plain(yearOf(year), monthOf(month), number(day)),
      exactly(number(hour), number(minute), 0),
      { kind: 'zone', word: { kind: 'offset', minutes: 0 } },
    ],
  ],
  // 2026-W48-6 and 2026-332
  [
    /(?<![\d-])(\d{4})-w(\d\d)-(\d)/g,
    ([, year, week, day]) => ofIso(dayOfWeekDate(number(year), number(week), number(day))),
  ],
  [
    /(?<![\d-])(\d{4})-(\d{3})(?![\d-])/g,
    ([, year, day]) => ofIso(addDays(`${year}-01-01` as LocalDate, number(day) - 1)),
  ],
  [
    /(?<!\d)(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?!\d)/g,
    ([, year, , month, day]) => [plain(number(year), number(month), number(day), false)],
  ],
  [
    /(?<!\d)((?:19|20)\d\d)(\d\d)(\d\d)(?!\d)/g,
    ([, year, month, day]) => [plain(number(year), number(month), number(day), false)],
  ],
  // 28-Nov-26, 28NOV26, 05/Dec/2026
  [
    new RegExp(
      String.raw`(?<!\d)(\d{1,2})([-/. ]?)(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\2(${YEAR}|\d\d)(?![\d:])`,
      'g',
    ),
    ([, day, mark, month = '', year]) =>
      mark === ' ' && year?.length === 2 ? null : [plain(yearOf(year), monthOf(month), number(day))],
  ],
  // November 28-29
  [
    new RegExp(
      String.raw`(?<![a-z])(${MONTH})\.? ?(\d{1,2})${NTH}? ?(?:-|to|and|or|&) ?(\d{1,2})${NTH}?(?![\d:.]| ?[ap]m)(?:,? ?(${YEAR}))?`,
      'g',
    ),
    ([, month = '', first, last, year]) => [
      plain(yearOf(year), monthOf(month), number(first)),
      JOIN,
      plain(yearOf(year), monthOf(month), number(last)),
    ],
  ],
  MONTH_DAY,
  [
    new RegExp(String.raw`(?<!\d)(\d{1,2})${NTH}?(?: of)?[ -]?(${MONTH})\.?(?:,? ?(${YEAR}|'\d\d))?`, 'g'),
    ([, day, month = '', year]) => [plain(yearOf(year), monthOf(month), number(day))],
  ],
  // Again, for a month behind a day that belongs to the month before it: Nov 28 Dec 1.
  MONTH_DAY,
  [
    /(?<![\d.:/$-])(\d{1,2})([-/.])(\d{1,2})(?:\2(\d{4}|\d\d)|(?![\d./-]))(?!\d|:|[a-z]| ?[ap]m(?![a-z])| (?:hours?|hrs?|h|days?|d|weeks?|min|mi)(?![a-z]))(?!-\d)/g,
    ([, first, mark = '', second, year]) => figures(number(first), number(second), year ?? null, mark),
  ],
  [
    new RegExp(String.raw`\b(?:the )?(\d{1,2})${NTH}\b`, 'g'),
    ([, day]) => [{ kind: 'date', date: { form: 'day', day: number(day) } }],
  ],
  [/\bday after tomorrow\b/g, ([words = '']) => relative(2, words)],
  [/\b(?:tomorrow|tmrw|tmr|tomo)\b/g, ([words = '']) => relative(1, words)],
  [/\b(?:today|tday)\b/g, ([words = '']) => relative(0, words)],
  [/\byesterday\b/g, ([words = '']) => relative(-1, words)],
  [
    new RegExp(String.raw`\b(?:(a )?week from )?(?:(this|coming|next|last) )?(${WEEKDAY})\.?`, 'g'),
    ([found = '', , which, day = '']) => [
      {
        kind: 'weekday',
        weekday: weekdayOfWord(day),
        which: /week from/.test(found) ? 'week-from' : which === 'next' || which === 'last' ? which : 'plain',
      },
    ],
  ],
];

function figures(first: number, second: number, year: string | null, mark: string): readonly Token[] | null {
  // 11-28 without a year is as often a range of something else; 2.30 is a time.
  if (year === null && mark !== '/' && Math.max(first, second) > 31) return null;
  if (year === null && mark === '.' && second > 12) return null;
  return [{ kind: 'date', date: { form: 'figures', parts: [first, second], year, mark } }];
}

const relative = (days: number, words: string): readonly Token[] => [{ kind: 'relative', days, words }];

export const exactly = (hour: number, minute: number, second: number): Token => ({
  kind: 'time',
  time: { hour, minute, second, half: null, wholeDay: true, padded: true, withSeconds: true },
});

const ofIso = (date: LocalDate): readonly Token[] => {
  const [year, month, day] = date.split('-').map(Number);
  return [plain(year ?? 0, month ?? 0, day ?? 0, false)];
};

/** ISO 8601, section 5.2.3: week 1 holds January 4. */
function dayOfWeekDate(year: number, week: number, weekday: number): LocalDate {
  const fourth = `${year}-01-04` as LocalDate;
  const monday = -((new Date(`${fourth}T00:00Z`).getUTCDay() + 6) % 7);
  return addDays(fourth, monday + (week - 1) * 7 + weekday - 1);
}

/** Takes every date and day out of a text that is plain. */
export function takeDates(text: string, put: Put<Token>): string {
  return RULES.reduce(
    (told, [pattern, read]) =>
      told.replace(pattern, (...all: unknown[]) => {
        // Behind what was found stand its place and the whole text.
        const found = all.slice(0, -2) as (string | undefined)[];
        const tokens = read(found);
        return tokens === null ? (found[0] ?? '') : ` ${tokens.map(put).join(' ')} `;
      }),
    text,
  );
}
