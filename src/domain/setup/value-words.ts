import { type Cents, cents, LARGEST_CENTS } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import { PPM } from '../money/rate.ts';
import { weekdayWord } from './setup-words.ts';

/** A single value of a setup as it is read aloud, in the unit its key carries: 12345 under `packCents` is "$123.45". */
export function valueInWords(key: string, value: unknown): string {
  if (value === undefined || value === '') return 'nothing';
  if (value === null) return 'off';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map((each) => String(each)).join(', ');
  if (typeof value === 'string') return textInWords(key, value);
  if (typeof value !== 'number') return JSON.stringify(value);
  if (/^cents|Cents|^(low|likely|high)$/.test(key)) return isCents(value) ? formatMoney(value) : `${value} cents`;
  if (key.endsWith('Ppm') || key === 'chance') return percentInWords(value);
  const figure = value.toLocaleString('en-US');
  return MINUTES.test(key) ? `${figure} ${value === 1 ? 'minute' : 'minutes'}` : figure;
}

function textInWords(key: string, value: string): string {
  if (key === 'weekday') return weekdayWord(value);
  return DATE_OR_TIME.test(value) ? value : `“${value}”`;
}

const DATE_OR_TIME = /^(\d{4}-\d\d-\d\d|\d\d:\d\d)$/;
const MINUTES = /Minutes$/;

/** Parts per million as a percentage with as many decimals as it needs: 86250 is "8.625%". */
export const percentInWords = (ppm: number): string => `${Number(((ppm / PPM) * 100).toFixed(4))}%`;

function isCents(value: number): value is Cents {
  return Number.isInteger(value) && Math.abs(value) <= LARGEST_CENTS && cents(value) === value;
}
