import { type Outcome, ok, refuse } from '../outcome.ts';
import { PPM, type Ppm, ppm } from './rate.ts';
import {
  type DecimalMark,
  LONGEST_FIGURE,
  readWrittenNumber,
  tidyFigure,
  type WrittenNumber,
} from './written-number.ts';

const RATE =
  /^(?:(?<whole>\d+)[- ])?(?:(?<top>\d+)\/(?<bottom>\d+)|(?<figure>[\d.,]*\d[\d.,]*)) ?(?<unit>%|percent|pct|bps?|basis points?)?$/i;
const FRACTIONS: Readonly<Record<string, string>> = {
  '¼': ' 1/4',
  '½': ' 1/2',
  '¾': ' 3/4',
  '⅛': ' 1/8',
  '⅜': ' 3/8',
  '⅝': ' 5/8',
  '⅞': ' 7/8',
};

/**
 * Reads a percentage: "8 %", "8.625", "8 5/8 %", "85 bps". A bare number is a percentage, except that one below 1
 * without a percent sign is refused: 0.08 may have been meant as a share, which would be 8 %.
 * @returns parts per million, exactly what was written; 0 to 1,000 %
 */
export function parsePercent(text: string, options: { readonly decimal?: DecimalMark } = {}): Outcome<Ppm> {
  const tidy = tidyFigure(text.replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => FRACTIONS[sign] ?? sign));
  if (tidy === '') return refuse('empty', 'Write a percentage, such as 8 or 8.625.');
  const parts = tidy.length > LONGEST_FIGURE ? undefined : RATE.exec(tidy)?.groups;
  if (parts === undefined || (parts.whole !== undefined && parts.figure !== undefined)) return notARate(tidy);
  const unit = parts.unit?.toLowerCase() ?? '';
  const decimals = unit.startsWith('b') ? 2 : 4;
  const number =
    parts.figure === undefined ? fromFraction(parts) : readWrittenNumber(parts.figure, options.decimal ?? '.');
  if (!number.ok) return number;
  const value = inMillionths(number.value, decimals);
  if (!Number.isInteger(value)) return refuse('too-fine', `“${tidy}” has too many decimals. Write at most four.`);
  if (unit === '' && value > 0 && value < PPM / 100) {
    return refuse('ambiguous', `“${tidy}” could be a share or a percentage. Write the percent sign: 8% or 0.08%.`);
  }
  if (value > 10 * PPM) return refuse('too-large', `“${tidy}” is above 1,000%. Check the digits.`);
  return ok(ppm(value));
}

/** Whole parts per million; not whole when the number is finer than one of them. */
function inMillionths(number: WrittenNumber, decimals: number): number {
  const kept = number.fraction.replace(/0+$/, '');
  return kept.length > decimals ? Number.NaN : Number(number.whole + kept.padEnd(decimals, '0'));
}

/** "8 5/8" as 8.625; the fraction is written out as far as it goes, which for thirds is too far to be a rate. */
function fromFraction({ whole = '0', top, bottom }: Record<string, string | undefined>): Outcome<WrittenNumber> {
  const part = Number(top) / Number(bottom);
  return part < 1 ? ok({ whole, fraction: String(part).slice(2) }) : notARate(`${top}/${bottom}`);
}

const notARate = (tidy: string) =>
  refuse('not-a-rate', `“${tidy.slice(0, LONGEST_FIGURE)}” is not a percentage. Write 8 or 8.625.`);
