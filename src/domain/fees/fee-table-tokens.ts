import { type Cents, cents, LARGEST_CENTS } from '../money/cents.ts';
import { PPM, type Ppm, ppm } from '../money/rate.ts';

/** One meaningful piece of a pasted line. What has no meaning here ("of the sale price") is not among them. */
export type FeeToken =
  | { readonly kind: 'money'; readonly cents: Cents }
  | { readonly kind: 'percent'; readonly ppm: Ppm }
  | { readonly kind: FeeWord };

/**
 * `to` joins the two ends of a range; `onward` and `or-less` follow a price, `over`, `from`, `up-to` and `under` come
 * before one; `gap` is a tab or whatever else keeps columns apart; `unreadable` is a figure that could mean several things.
 */
export type FeeWord =
  | 'to'
  | 'onward'
  | 'or-less'
  | 'over'
  | 'from'
  | 'up-to'
  | 'under'
  | 'plus'
  | 'least'
  | 'most'
  | 'greater-of'
  | 'lesser-of'
  | 'no-fee'
  | 'gap'
  | 'unreadable';

/** Tried in this order at each place of the line; longer wordings stand before the shorter ones inside them. */
const WORDS: readonly (readonly [FeeWord, RegExp])[] = [
  ['onward', /^(?:and|or|&)\s+(?:up|over|above|more|higher|greater)\b/i],
  ['or-less', /^(?:and|or|&)\s+(?:under|below|less|lower)\b/i],
  ['greater-of', /^(?:the\s+)?(?:greater|higher|larger)\s+of\b/i],
  ['lesser-of', /^(?:the\s+)?(?:lesser|lower|smaller)\s+of\b/i],
  ['up-to', /^(?:up\s+to|at\s+most|(?:but\s+)?not\s+(?:over|more\s+than|exceeding)|<=|≤)/i],
  ['under', /^(?:less\s+than|under|below|<)/i],
  ['from', /^(?:from|starting\s+at|>=|≥)/i],
  ['over', /^(?:more\s+than|over|above|exceeding|>)/i],
  ['least', /^(?:minimum|min\b|at\s+least|not\s+less\s+than)/i],
  ['most', /^(?:maximum|max\b|cap\b|capped\s+at)/i],
  ['no-fee', /^(?:no\s+fee|free|none|waived)\b/i],
  ['to', /^(?:-|–|—|−|to\b|thru\b|through\b|until\b)/i],
  ['onward', /^up\b/i],
  ['plus', /^(?:\+|plus\b)/i],
  // Dot leaders of a printed list, column rules, tabs, wide blanks.
  ['gap', /^(?:\.{2,}|…+|[\t|;:=]|\s{2,})+/],
  // In accounts an amount in brackets is below nothing; a fee never is.
  ['unreadable', /^\(\s*\$?\s*\d[\d,.]*\s*\)/],
  // A letter O or l typed for a digit, or any other letter right behind one, leaves the figure open.
  ['unreadable', /^\$?\s*(?:[OoIl][\d.,OoIl]*\d|\d[\d.,]*[OoIl])[\d.,OoIl]*/],
  [
    'unreadable',
    /^\$?\s*\d[\d.,]*(?!(?:k|to|thru|through|until|and|or|up|plus|pct|percent|usd|dollars?|each|min|max|cap)\b)\p{L}+/iu,
  ],
];

const FIGURE = /^\$?\s*(\d(?:[\d,]*\d)?)(?:\.(\d+))?(\s*(?:%|percent\b|pct\b)|k\b)?/i;
const OTHER = /^(?:[\p{L}’']+|.)/su;

/** Cuts one line into what matters for a fee. Never fails: a figure that can't be read becomes `unreadable`. */
export function feeTokens(line: string): readonly FeeToken[] {
  const tokens: FeeToken[] = [];
  let rest = line.trim();
  while (rest !== '') {
    const word = WORDS.find(([, pattern]) => pattern.test(rest));
    const match = word?.[1].exec(rest) ?? FIGURE.exec(rest) ?? OTHER.exec(rest);
    if (match === null) break;
    if (word !== undefined) tokens.push({ kind: word[0] });
    else if (FIGURE.test(rest)) tokens.push(figure(match));
    rest = rest.slice(match[0].length);
  }
  return tokens;
}

function figure([, whole = '', fraction = '', unit = '']: RegExpExecArray): FeeToken {
  // "1,00" or "12,34,5" is not how dollars are grouped here; guessing would move a fee tenfold.
  if (whole.includes(',') && !/^[1-9]\d{0,2}(,\d{3})+$/.test(whole)) return { kind: 'unreadable' };
  const digits = whole.replaceAll(',', '');
  if (unit !== '' && !/^k$/i.test(unit)) return percent(digits, fraction);
  const decimals = /^k$/i.test(unit) ? 5 : 2;
  if (fraction.length > decimals) return { kind: 'unreadable' };
  const value = Number(digits + fraction.padEnd(decimals, '0'));
  return value <= LARGEST_CENTS ? { kind: 'money', cents: cents(value) } : { kind: 'unreadable' };
}

/** `2` and `5` are 2.5%. At most four decimals, which is what a rate can hold. */
export function percent(digits: string, fraction: string): FeeToken {
  const value = Number(digits + fraction.padEnd(4, '0'));
  return fraction.length <= 4 && value <= PPM ? { kind: 'percent', ppm: ppm(value) } : { kind: 'unreadable' };
}
