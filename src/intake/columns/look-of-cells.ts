import { parseMiles } from '../../domain/lot/parse-miles.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import { matchTitle } from '../../domain/setup/match-title.ts';
import { matchVenue } from '../../domain/setup/match-venue.ts';
import type { TitleBrand } from '../../domain/setup/money-rules.ts';
import type { Venue } from '../../domain/setup/venue.ts';
import { checkDigitMatches } from '../../domain/vin/check-digit.ts';
import { readVin } from '../../domain/vin/read-vin.ts';
import { isBlankCell } from './blank-cell.ts';
import type { ColumnFieldId } from './column-fields.ts';

/** What of the setup gives words a meaning. */
export interface KnownNames {
  readonly venues: readonly Pick<Venue, 'id' | 'name'>[];
  readonly titles: readonly Pick<TitleBrand, 'id' | 'name'>[];
}

/** What the cells of a column look like, or null when they could be anything. */
export type CellLook =
  | 'vin'
  | 'year'
  | 'car'
  | 'miles'
  | 'money'
  | 'number'
  | 'date-time'
  | 'date'
  | 'time'
  | 'title'
  | 'venue'
  | 'url'
  | 'json'
  | 'text';

const DATE = String.raw`\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.? \d{1,2}|\d{1,2} (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)|\d{1,2}[-/]\d{1,2}|(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*|today|tomorrow`;
const TIME = String.raw`\d{1,2}:\d{2}|\d{1,2} ?[ap]\.?m\b|noon`;
const HAS_DATE = new RegExp(String.raw`(?:^|[\s,])(?:${DATE})`, 'i');
const HAS_TIME = new RegExp(String.raw`(?:^|[\s,T])(?:${TIME})`, 'i');

/** Tried in this order; the first that fits enough cells names the column. */
function tests(names: KnownNames): readonly (readonly [CellLook, (cell: string) => boolean])[] {
  return [
    ['vin', (cell) => readVin(cell).ok],
    ['url', (cell) => /^https?:\/\/\S+$/i.test(cell)],
    ['json', (cell) => cell.startsWith('{') && cell.endsWith('}')],
    ['car', (cell) => /^(?:19|20)\d\d\s+\p{L}[\p{L}\d'’&.-]*\s+\S/u.test(cell)],
    ['year', (cell) => /^(?:19[5-9]\d|20[0-4]\d)$/.test(cell)],
    ['date-time', (cell) => HAS_DATE.test(cell) && HAS_TIME.test(cell)],
    ['time', (cell) => HAS_TIME.test(cell) && !HAS_DATE.test(cell)],
    ['date', (cell) => HAS_DATE.test(cell) && /\d/.test(cell)],
    ['miles', (cell) => /mi|km/i.test(cell) && parseMiles(cell).ok],
    ['money', (cell) => cell.includes('$') && parseMoney(cell).ok],
    ['number', (cell) => parseMoney(cell).ok],
    ['title', (cell) => matchTitle(cell, names.titles).ok],
    ['venue', (cell) => matchVenue(cell, names.venues).ok],
    ['text', () => true],
  ];
}

/** How many of a column's cells must fit: nine in ten, so that a bad cell does not hide what the column is. */
const ENOUGH = 0.9;
/** Longer cells say nothing that the first of their characters do not say. */
const LONGEST = 120;

/** @param cells the cells of one column, blank ones included */
export function lookOfCells(cells: readonly string[], names: KnownNames): CellLook | null {
  const filled = cells.filter((cell) => !isBlankCell(cell)).map((cell) => cell.trim().slice(0, LONGEST));
  if (filled.length === 0) return null;
  const misfits = Math.floor(filled.length * (1 - ENOUGH));
  return tests(names).find(([, fits]) => fitAllBut(misfits, filled, fits))?.[0] ?? null;
}

/** Stops at the first cell too many that does not fit: most tests fail at once. */
function fitAllBut(misfits: number, cells: readonly string[], fits: (cell: string) => boolean): boolean {
  let left = misfits;
  return cells.every((cell) => fits(cell) || left-- > 0);
}

/** Whether most VINs of a column have a right check digit, which seventeen random characters would not. */
export function areVinsSure(cells: readonly string[]): boolean {
  const vins = cells.flatMap((cell) => {
    const vin = readVin(cell);
    return vin.ok ? [vin.value] : [];
  });
  return vins.filter(checkDigitMatches).length * 2 > vins.length;
}

/** Which looks go with a field that a heading names; a heading whose cells look like something else is doubted. */
export const LOOKS_OF: Readonly<Partial<Record<ColumnFieldId, readonly CellLook[]>>> = {
  vin: ['vin'],
  year: ['year', 'number', 'text'],
  car: ['car', 'text'],
  miles: ['miles', 'number', 'year', 'text'],
  kilometres: ['miles', 'number', 'year', 'text'],
  closes: ['date-time', 'date', 'time', 'number', 'text'],
  closeDate: ['date', 'date-time', 'number'],
  closeTime: ['time', 'date-time'],
  closesUtc: ['date-time'],
  timeLeft: ['time', 'number', 'text', 'year'],
  priceNow: ['money', 'number', 'year'],
  increment: ['money', 'number', 'year'],
  retailLow: ['money', 'number', 'year'],
  retailLikely: ['money', 'number', 'year'],
  retailHigh: ['money', 'number', 'year'],
  reconLow: ['money', 'number', 'year'],
  reconLikely: ['money', 'number', 'year'],
  reconHigh: ['money', 'number', 'year'],
  transport: ['money', 'number', 'year'],
  proxy: ['money', 'number', 'year'],
  pageUrl: ['url'],
  more: ['json'],
};
