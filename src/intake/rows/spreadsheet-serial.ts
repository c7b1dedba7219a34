import { DAY, MINUTE } from '../../domain/time/units.ts';

/** Day 0 of the day counts that spreadsheets keep, chosen so that days from March 1900 come out right. */
const DAY_ZERO = Date.UTC(1899, 11, 30);
/** Day counts of the years 2000 to 2100; other numbers are no dates here. */
const FIRST = 36_526;
const LAST = 73_050;

/**
 * Cells copied as values hold dates as day counts: 46354.5868 is 2026-11-28 14:05, and 0.5868 is 14:05. Rounded to the
 * minute, since the fraction is never exact. Other text is returned as it is.
 */
export function serialToText(text: string): string {
  if (!/^\d{5}(?:\.\d+)?$|^0?\.\d+$/.test(text)) return text;
  const days = Number(text);
  const minutes = Math.round((days * DAY) / MINUTE);
  const written = new Date(DAY_ZERO + minutes * MINUTE).toISOString();
  if (days < 1) return written.slice(11, 16);
  if (days < FIRST || days > LAST) return text;
  return Number.isInteger(days) ? written.slice(0, 10) : `${written.slice(0, 10)} ${written.slice(11, 16)}`;
}
