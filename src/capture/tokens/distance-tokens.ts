import { parseMiles } from '../../domain/lot/parse-miles.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';

/** A distance with its unit as it stands in a text, in whole miles. */
export interface DistanceToken {
  readonly miles: number;
  readonly metric: boolean;
  /** Rounded, as "45k miles". */
  readonly rough: boolean;
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

export const FIGURE = String.raw`\d{1,3}(?: \d{3}){1,2}(?![,.'’]?\d)|\d{1,3}(?:[,.'’]\d{2,3}){1,2}(?:\.\d)?|\d{1,7}(?:\.\d)?`;
const MILES = String.raw`mi\b\.?|miles?\b|mls?\b\.?|millas\b|meilen\b|ميل|מייל`;
const KILOMETERS = String.raw`kms?\b\.?|kilomet(?:er|re)s?\b|kilómetros\b|kilomètres\b|كم|كيلومتر|ק["״]מ`;
const DISTANCE = new RegExp(
  String.raw`(?<![\p{L}\d.,'’$#/-])(${FIGURE})( ?k| thousand)? ?-?(?:actual |original |showing )?(?:(${MILES})|(${KILOMETERS}))(?!/|\s?(?:p\.?h\b|/h|per\b|an hour|a gallon))`,
  'giu',
);

/** Every distance with a unit, in the order of the text. */
export function distancesIn(text: string, decimal: DecimalMark | undefined): readonly DistanceToken[] {
  if (!/\d/.test(text)) return [];
  const found: DistanceToken[] = [];
  for (const match of text.matchAll(DISTANCE)) {
    const [whole, figure = '', thousands, , km] = match;
    const plain = figure
      .replaceAll('’', "'")
      .replace(/^(\d{1,2}(?:,\d\d)+,\d{3})$/, (lakhs) => lakhs.replaceAll(',', ''));
    const written = `${plain}${thousands === undefined ? '' : 'k'} ${km === undefined ? 'mi' : 'km'}`;
    const read = parseMiles(written, decimal === undefined ? {} : { decimal });
    if (!read.ok) continue;
    const start = match.index;
    found.push({
      miles: read.value,
      metric: km !== undefined,
      rough: thousands !== undefined,
      text: whole.trim(),
      start,
      end: start + whole.length,
    });
  }
  return found;
}
