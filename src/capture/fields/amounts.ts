import type { Cents } from '../../domain/money/cents.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';

const FIGURE = String.raw`\d{1,3}(?:[,.']\d{3}){1,4}(?:[.,]\d{2})?|\d{1,9}(?:[.,]\d{1,2})?`;
/** What may not follow a figure: it would be part of a longer one, or one of which a part is masked or misprinted. */
const NO_MORE = String.raw`(?![\d]|[.,]\d| \d{3}(?!\d)|[.,']?(?!USD|US ?\$)[\p{L}*•●·#_?]|,\s*$)`;
const SPACED = String.raw`\d{1,3}(?: \d{3}){1,3}(?:[.,]\d{2})?`;
/** An amount of US dollars in running text, its sign before or after. */
export const AMOUNT = String.raw`(?:(?<![\p{L}$])(?:US ?\$|USD|\$) ?(?:${FIGURE})(?: ?k\b)?|(?<![\d.,'])(?:${SPACED}|${FIGURE}) ?(?:USD\b|US ?\$|\$(?! ?\d)|dollars?\b))${NO_MORE}`;
const AMOUNTS = new RegExp(AMOUNT, 'giu');
const BARE = new RegExp(String.raw`^(?:${SPACED}|${FIGURE})(?!%| ?(?:mi|km|miles|bids?)\b)${NO_MORE}`, 'iu');
const OTHER_CURRENCY =
  /[€£¥₹₽₪]|\b(?:CAD|EUR|GBP|MXN|AUD|NZD|JPY|CHF|AED|SAR|ILS|pesos?|euros?)\b|(?<![\p{L}])(?:C|CA|CDN|MX|A|AU|NZ) ?\$|د\.إ|ر\.س/iu;

export type AmountIn =
  | { readonly kind: 'one'; readonly cents: Cents; readonly signed: boolean }
  | { readonly kind: 'none' | 'several' | 'other-currency' };

/**
 * The one amount in the value of a label. With a currency sign anywhere, only amounts that have it count; without, a
 * figure at the beginning does. An amount in another currency is no amount of dollars.
 */
export function amountIn(value: string, decimal: DecimalMark | undefined): AmountIn {
  const text = value.slice(0, 200).replace(/\n/g, ' ');
  if (OTHER_CURRENCY.test(text)) return { kind: 'other-currency' };
  // "$20 100" alone is one amount; in running text a blank may as well stand between two.
  const whole = parseMoney(text, decimal === undefined ? {} : { decimal });
  if (whole.ok && whole.value >= 0) return { kind: 'one', cents: whole.value, signed: /\$|USD|dollar/i.test(text) };
  const found = new Set(amountsIn(text, decimal));
  const [first] = found;
  if (first !== undefined) return found.size === 1 ? { kind: 'one', cents: first, signed: true } : { kind: 'several' };
  if (text.includes('$')) return { kind: 'none' };
  const bare = BARE.exec(text)?.[0];
  const read = bare === undefined ? undefined : parseMoney(bare, decimal === undefined ? {} : { decimal });
  return read?.ok === true ? { kind: 'one', cents: read.value, signed: false } : { kind: 'none' };
}

/** Every amount of dollars in a text that can be read in one way only. */
export function amountsIn(text: string, decimal: DecimalMark | undefined): readonly Cents[] {
  return [...text.matchAll(AMOUNTS)].flatMap(([token]) => {
    const read = parseMoney(token, decimal === undefined ? {} : { decimal });
    return read.ok && read.value >= 0 ? [read.value] : [];
  });
}

const PAGE_CURRENCY =
  /\b(?:prices?|bids?|amounts?|currency|figures)\b[^.\n]{0,40}\b(?:CAD|Canadian dollars?|MXN|Mexican pesos?|pesos|EUR|euros?|AUD|Australian dollars?)\b/i;

/** Whether a line says that the dollars of this page are not US dollars. */
export const saysOtherCurrency = (text: string): boolean => text.length <= 300 && PAGE_CURRENCY.test(text);
