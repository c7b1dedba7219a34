import { type Outcome, ok, refuse } from '../outcome.ts';
import { type Cents, cents } from './cents.ts';
import { type DecimalMark, LONGEST_FIGURE, readWrittenNumber, tidyFigure } from './written-number.ts';

/** Ten million dollars. Every amount here is about one car or its bill, so more than that is a slip of the keyboard. */
export const MOST_WRITTEN = cents(1_000_000_000);

const CURRENCY = String.raw`us ?\$|usd|\$|(?:us )?dollars?`;
const AMOUNT = new RegExp(
  String.raw`^(?<sign>[-+]?) ?(?:${CURRENCY})? ?(?<inner>[-+]?) ?(?<figure>[\d.,' ]*\d[\d.,]*)` +
    ` ?(?<thousands>k|thousand|grand)? ?(?:${CURRENCY})? ?(?<after>-?)$`,
  'i',
);
const OTHER_CURRENCY =
  /[€£¥₹₽]|\b(?:cad|eur|gbp|mxn|aud|nzd|jpy|chf|euros?|pounds?|pesos?)\b|(?:\bca?|\bmx|\bau?) ?\$/i;
const TWO_AMOUNTS = /\d ?k? ?(?:-|to|or|\/|\.\.) ?\$? ?\d/i;

/**
 * Reads an amount of US dollars the way people and files write it: "$12,345", "12345.50", "12.5k", "USD 9,500",
 * "(1,200)" and "1,200-" for less than nothing. What could mean two amounts is refused, with what to write instead, and so
 * is more than {@link MOST_WRITTEN}.
 * @param options.decimal says which mark stands before the decimals where it is known; "3.456" and "1.234,56" then read
 */
export function parseMoney(text: string, options: { readonly decimal?: DecimalMark } = {}): Outcome<Cents> {
  const tidy = tidyFigure(text);
  if (tidy === '') return refuse('empty', 'Write an amount, such as 12,345.');
  if (tidy.length > LONGEST_FIGURE) return notMoney(`${tidy.slice(0, LONGEST_FIGURE)}…`);
  const brackets = /^\(([^()]*)\)$/.exec(tidy)?.[1]?.trim();
  const parts = AMOUNT.exec(brackets ?? tidy)?.groups;
  if (parts === undefined) return whyNot(tidy);
  const { sign = '', inner = '', figure = '', thousands, after = '' } = parts;
  const signs = sign + inner + after;
  if (signs.length + (brackets === undefined ? 0 : 1) > 1) return notMoney(tidy);
  // With "k" behind it, three decimals are thousands after all: 3.456k is $3,456 and nothing else.
  const number = readWrittenNumber(figure, options.decimal ?? (thousands === undefined ? undefined : '.'));
  if (!number.ok) return number;
  const size = inCents(number.value.whole, number.value.fraction, thousands === undefined ? 2 : 5);
  if (size === 'too-fine') return refuse('too-fine', `“${tidy}” has fractions of a cent. Write at most two decimals.`);
  if (size === 'too-large') return refuse('too-large', `“${tidy}” is more than any car costs. Check the digits.`);
  return ok(brackets !== undefined || signs === '-' ? cents(-size) : size);
}

/** @param decimals how many decimals make a whole cent: 2 for dollars, 5 for thousands of dollars */
function inCents(whole: string, fraction: string, decimals: number): Cents | 'too-fine' | 'too-large' {
  const kept = fraction.replace(/0+$/, '');
  const value = kept.length > decimals ? nearCents(whole, kept, decimals) : Number(whole + kept.padEnd(decimals, '0'));
  if (value === undefined) return 'too-fine';
  return value <= MOST_WRITTEN ? cents(value) : 'too-large';
}

/** A figure of so many digits was written by a program that counts in binary (IEEE 754 has 15 to 17 decimal digits). */
const BINARY_DIGITS = 15;

/** The cent that a spreadsheet meant by 31900.000000000004, which differs from it by no more than its arithmetic. */
function nearCents(whole: string, fraction: string, decimals: number): number | undefined {
  if ((whole + fraction).replace(/^0+/, '').length < BINARY_DIGITS) return undefined;
  const value = Number(`${whole}.${fraction}`) * 10 ** decimals;
  const near = Math.round(value);
  return Math.abs(value - near) <= near * 2 ** -40 ? near : undefined;
}

function whyNot(tidy: string) {
  if (OTHER_CURRENCY.test(tidy)) {
    return refuse('other-currency', `“${tidy}” is not in US dollars. Convert it, and write the dollars.`);
  }
  if (TWO_AMOUNTS.test(tidy)) return refuse('two-amounts', `“${tidy}” has two amounts. Write one of them.`);
  return notMoney(tidy);
}

const notMoney = (tidy: string) =>
  refuse('not-money', `“${tidy}” is not an amount. Write dollars, such as 12,345 or 12.5k.`);
