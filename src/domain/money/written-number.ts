import { type Outcome, ok, refuse } from '../outcome.ts';

/** Which mark stands before the decimals: the point of the United States, or the comma of most of Europe. */
export type DecimalMark = '.' | ',';

/** A number of 0 or more as the digits that were written: nothing is rounded and nothing can overflow. */
export interface WrittenNumber {
  /** Digits before the decimals, without separators; never empty. */
  readonly whole: string;
  /** Digits after the decimal mark; empty where there is none. */
  readonly fraction: string;
}

/** Longer text is no figure; stopping here keeps every pattern below fast on whatever is pasted. */
export const LONGEST_FIGURE = 60;

/** Grouped by threes with one kind of separator, or not grouped at all; then perhaps decimals. */
const WITH_POINT = /^(?:(\d{1,3}(?:([,' ])\d{3})(?:\2\d{3})*)|(\d*))(?:\.(\d*))?$/;
const WITH_COMMA = /^(?:(\d{1,3}(?:([.' ])\d{3})(?:\2\d{3})*)|(\d*))(?:,(\d*))?$/;

/**
 * Reads digits with their separators. Without `decimal` a point counts as the decimal mark, except where it could as
 * well set off thousands: "3.456" is refused, and so is everything written with a decimal comma.
 * @param text tidied, see {@link tidyFigure}; no sign, unit or currency
 */
export function readWrittenNumber(text: string, decimal?: DecimalMark): Outcome<WrittenNumber> {
  if (decimal === undefined && /^[1-9]\d{0,2}\.\d{3}$/.test(text)) return ambiguous(text);
  const match = (decimal === ',' ? WITH_COMMA : WITH_POINT).exec(text);
  const grouped = match?.[1]?.replace(/\D/g, '');
  const whole = grouped ?? match?.[3] ?? '';
  const fraction = match?.[4] ?? '';
  if (match !== null && whole + fraction !== '') return ok({ whole: whole === '' ? '0' : whole, fraction });
  if (/^[\d.,]+$/.test(text) && /\d/.test(text)) return mixedMarks(text);
  return refuse('not-a-number', `“${text}” is not a number. Write digits, such as 12,345 or 12345.50.`);
}

const ambiguous = (text: string) =>
  refuse(
    'ambiguous',
    `“${text}” could mean ${text.replace('.', ',')}, or ${text.split('.')[0]} and a fraction. Write it the way you mean it.`,
  );

const mixedMarks = (text: string) =>
  refuse(
    'ambiguous',
    `The points and commas in “${text}” can be read in more than one way. Write thousands with a comma and decimals with a point, as in 1,234.56.`,
  );

/**
 * One plain notation out of the many that pages and spreadsheets use: full-width digits and signs, blanks that do not
 * break, invisible marks, typographic dashes and apostrophes.
 */
export function tidyFigure(text: string): string {
  // Almost every figure is plain already, and there can be a million of them in a file.
  if (/^[\d.,$]+$/.test(text)) return text;
  return text
    .replace(/[\uff01-\uff5e]/g, (wide) => String.fromCharCode(wide.charCodeAt(0) - 0xfee0))
    .replace(/[\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\0]/g, '')
    .replace(/[‐-―−﹣]/g, '-')
    .replace(/[’‘ʼ`´]/g, "'")
    .replace(/\s+/g, ' ')
    .trim();
}
