import type { Cents } from '../../domain/money/cents.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';

/** An amount as it stands in a text. */
export interface MoneyToken {
  readonly cents: Cents;
  /** Written with a sign or word for dollars. */
  readonly signed: boolean;
  /** In another currency than US dollars. */
  readonly foreign: boolean;
  /** Rounded to hundreds, as "12.4k". */
  readonly rough: boolean;
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

const FIGURE = String.raw`\d{1,3}(?:[,.'’]\d{2,3}){1,4}(?:[.,]\d{2})?|\d{1,9}(?:[.,]\d{1,2})?`;
const SPACED = String.raw`\d{1,3}(?: \d{3}){1,3}(?:[.,]\d{2})?`;
const OTHERS = String.raw`(?:C|CA|CDN|MX|A|AU|NZ|HK)[ ]?\$|CAD|EUR|GBP|MXN|AUD|NZD|CHF|[€£¥₹₩₽₺]`;
const DOLLARS = String.raw`US ?\$|USD|U\.S\. ?\$|\$`;
const BEFORE = String.raw`(?:(?<![\p{L}$])(?<other>${OTHERS})|(?<![\p{L}$])(?<sign>${DOLLARS}))[  ]?`;
const AFTER = String.raw`[  ]?(?:(?<otherAfter>(?:${OTHERS}|\$ ?(?:CAD?|CDN|MXN?)|Canadian dollars?|pesos|euros?))(?![\p{L}])|(?<signAfter>USD|US ?\$|\$(?! ?\d)|dollars?\b))`;
/** What may not follow a figure: it would be part of a longer one, or one of which a part is masked or misprinted. */
const NO_MORE = String.raw`(?!\d|\p{No}|[.,'’]\d|[.,'’]?[\p{L}*•●·#_?█░▒▓■▪]|,\s*$)`;
const SIGNED = new RegExp(
  String.raw`${BEFORE}(?<figure>${SPACED}(?!\d)|${FIGURE})(?: (?<cents>\d\d)(?![\d,.]))?(?<thousands> ?k\b)?(?:(?= ?(?:USD|US ?\$|CAD|CDN)\b)|${NO_MORE})(?:[  ]?(?<also>CAD|CDN|USD)\b)?`,
  'giu',
);
const TRAILED = new RegExp(
  String.raw`(?<![\p{L}\d.,'’$/-])(?<figure>${SPACED}(?!\d)|${FIGURE})(?<thousands> ?k)?${AFTER}(?!\d)`,
  'giu',
);
const BARE = new RegExp(
  String.raw`(?<![\p{L}\d.,'’$#/:-])(?<figure>${SPACED}(?!\d)|${FIGURE})(?<thousands> ?k\b)?${NO_MORE}(?![%/:-])`,
  'gu',
);

/** Every amount that carries a sign or word for money, in the order of the text. One that can be read in two ways is left out. */
export function moneyIn(text: string, decimal: DecimalMark | undefined): readonly MoneyToken[] {
  if (!/\d/.test(text)) return [];
  const found: MoneyToken[] = [];
  for (const match of text.matchAll(SIGNED)) add(found, match, decimal, true);
  for (const match of text.matchAll(TRAILED)) add(found, match, decimal, true);
  return found.sort((a, b) => a.start - b.start);
}

/** The figures of a text that is said to be money, though they carry no sign. */
export function bareAmountsIn(text: string, decimal: DecimalMark | undefined): readonly MoneyToken[] {
  const found: MoneyToken[] = [];
  for (const match of text.slice(0, 200).matchAll(BARE)) add(found, match, decimal, false);
  return found;
}

function add(found: MoneyToken[], match: RegExpExecArray, decimal: DecimalMark | undefined, signed: boolean): void {
  const { figure = '', cents, thousands, other, otherAfter, also } = match.groups ?? {};
  const start = match.index;
  const end = start + match[0].length;
  if (found.some((one) => start < one.end && one.start < end)) return;
  const whole = cents === undefined ? figure : `${figure}.${cents}`;
  const read = parseMoney(`${whole}${thousands === undefined ? '' : 'k'}`, decimal === undefined ? {} : { decimal });
  // Groups of two and three, as India writes them, are one plain number.
  const lakhs = /^\d{1,2}(?:,\d\d)+,\d{3}$/.test(figure) ? parseMoney(figure.replaceAll(',', '')) : read;
  if (!lakhs.ok || lakhs.value < 0) return;
  const foreign = other !== undefined || otherAfter !== undefined || (also !== undefined && !/^USD/i.test(also));
  found.push({
    cents: lakhs.value,
    signed,
    foreign,
    rough: thousands !== undefined,
    text: match[0].trim(),
    start,
    end,
  });
}

const MASKED =
  /(?:\$|US ?\$|CAD) ?[\dOoIl]{0,3}[,.]?(?:[*•●·#_?xX]{2,}|[█░▒▓■▪]|[\dOoIl]*[OolI][\dOolI,]*)|\$ ?\d{1,3},[xX*•#_?\d]{1,3}(?![\d.])|\$ ?\d+(?:\.\d+)?M\b/u;

/** Whether a text has an amount of which a part is hidden or misprinted: "$12,***", "$1O,400", "$18.4M". */
export const hasMaskedMoney = (text: string): boolean => {
  const found = MASKED.exec(text)?.[0];
  return found !== undefined && !/^\$ ?\d{1,3},\d{3}$/.test(found);
};
