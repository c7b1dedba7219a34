import { WEEKDAYS, type Weekday } from '../time/weekdays.ts';

const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
] as const;

const DAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

/** "nov", "november", "sept": a month as it is written, to stand in a pattern. */
export const MONTH =
  '(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)(?![a-z])';

/** "sat", "saturday", "thurs": a day of the week likewise. */
export const WEEKDAY = '(?:mon|tues?|weds?|wednes|thu|thurs?|fri|sat|satur|sun)(?:day)?s?(?![a-z])';

/** 1 to 12. */
export const monthOf = (word: string): number => MONTHS.findIndex((month) => month.startsWith(word.slice(0, 3))) + 1;

export const weekdayOfWord = (word: string): Weekday => {
  const index = DAYS.findIndex((day) => day.startsWith(word.slice(0, 3)));
  return WEEKDAYS[index] ?? 'mon';
};

const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** "two" as "2", up to twelve. */
export const withFigures = (text: string): string =>
  text.replace(new RegExp(String.raw`\b(?:${NUMBERS.join('|')})\b`, 'g'), (word) => String(NUMBERS.indexOf(word) + 1));

/** Words that are told again when a letter of them is wrong. */
export const SPELLED: readonly string[] = [
  ...MONTHS.filter((month) => month.length > 4),
  ...DAYS,
  'tomorrow',
  'yesterday',
  'tonight',
  'afternoon',
  'morning',
  'evening',
  'midnight',
  'eastern',
  'central',
  'mountain',
  'pacific',
  'arizona',
];
