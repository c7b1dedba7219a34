import { inEnglish } from './french.ts';
import { withFigures } from './names.ts';

type Rule = readonly [pattern: RegExp, told: string | ((...found: readonly string[]) => string)];

const minutes = (hour: string, past: string) => `${hour}:${past}`;
const hourBefore = (hour: string) => String(((Number(hour) + 10) % 12) + 1);

/** One form for what is written in several, and for what a hand lets slip. */
const RULES: readonly Rule[] = [
  [/[‘’ʼ´`]/g, "'"],
  [/[−‐‑]/g, '-'],
  [/[–—]/g, ' - '],
  [/\/{2,}/g, '/'],
  // The letter O for a nought, a semicolon for a colon, and blanks around it.
  [/(?<=\d ?[:;] ?)oo(?![a-z\d])/g, '00'],
  [/(?<=\d ?[:;] ?\d)o(?![a-z\d])/g, '0'],
  [/(\d) ?[:;] ?(\d\d)(?!\d)/g, '$1:$2'],
  [/(?<![a-z])([ap])\. ?m\b\.?/g, '$1m'],
  [/(?<=\d ?)([ap])\1m\b/g, '$1m'],
  [/(?<=\d ?)([ap]m)(?=[a-z]{2,4}\b)/g, '$1 '],
  [/(?<![a-z])([ecmpahn]k?)\. ?([sd])\. ?t\b\.?/g, '$1$2t'],
  [/(?<![a-z])([ecmpn])\. ?t\.(?![a-z])/g, '$1t'],
  [/\bo' ?clock\b|\boclock\b/g, "o'clock"],
  [/\(us (?:&|and) canada\)/g, ' '],
  [
    /^p(?=\d|t\d)(?:(\d+)d)?t?(?:(\d+)h)?(?:(\d+)m)?(?:(\d+)s)?$/g,
    (_, ...parts) =>
      `in ${['days', 'hours', 'minutes', 'seconds'].map((unit, i) => (parts[i] ? `${parts[i]} ${unit}` : '')).join(' ')}`,
  ],
  [/ ,/g, ','],
  [/(?<=\d)-?ish\b/g, ' ish'],
  [/\bt ?- ?(?=\d)/g, 'in '],
  [/\bhalf an hour\b/g, '30 minutes'],
  [/\ban hour\b/g, '1 hour'],
  [/,? ?\bone (?:lot )?every \d+ ?(?:min(?:ute)?s?|sec(?:ond)?s?)\b/g, ' approximately'],
  [/\b(?:begins?|starts?|starting) (?:to close|closing)\b/g, 'closes approximately'],
];

/** After numbers have become figures. */
const LATE_RULES: readonly Rule[] = [
  [/\bhalf past (\d{1,2})\b/g, (_, hour = '') => minutes(hour, '30')],
  [/\b(?:a )?quarter past (\d{1,2})\b/g, (_, hour = '') => minutes(hour, '15')],
  [/\b(?:a )?quarter (?:to|before|till) (\d{1,2})\b/g, (_, hour = '') => minutes(hourBefore(hour), '45')],
  [/\s+/g, ' '],
];

/** A written close with one form for each thing, in lower case. What it does not understand stays as it is. */
export function plainText(text: string): string {
  const lower = text
    .normalize('NFKC')
    .replace(/[\p{Cc}\u200b\ufeff]/gu, ' ')
    .replace(/\s+/g, ' ')
    .toLowerCase();
  return inTurn(LATE_RULES, withFigures(inEnglish(inTurn(RULES, lower)))).trim();
}

const inTurn = (rules: readonly Rule[], text: string): string =>
  rules.reduce((told, [pattern, word]) => told.replace(pattern, word as string), text);
