import { type Instant, instant } from '../time/instant.ts';
import { DAY } from '../time/units.ts';

/** The day number that spreadsheets give to 1970-01-01, counting from 1899-12-30. */
const SERIAL_OF_1970 = 25_569;
/** The days that a spreadsheet's number can stand for: the years 1990 to 2099. Others are numbers of something else. */
const EARLIEST = Date.UTC(1990, 0, 1);
const LATEST = Date.UTC(2100, 0, 1);
/** No sale is further from now; a number of that many figures is a telephone's, as likely. */
const FAR = 400 * DAY;

/**
 * A moment or a wall time written as a bare number, with or without a name in front: Unix seconds or milliseconds, or a
 * spreadsheet's day number, whose fraction is the time of day; its text is that date as people write it. Null when it is none.
 */
export function timestampNumber(
  text: string,
  now: Instant,
): { readonly kind: 'moment'; readonly at: Instant } | { readonly kind: 'wall'; readonly text: string } | null {
  const [, digits] = /^(?:[a-z][\w .-]{0,30}[=:] ?)?["']?(\d{5,13}(?:[.,]\d+)?)["']?$/i.exec(text) ?? [];
  if (digits === undefined) return null;
  const value = Number(digits.replace(',', '.'));
  const ms = [value, value * 1000].find((one) => Math.abs(one - now) < FAR);
  if (ms !== undefined) return { kind: 'moment', at: instant(Math.floor(ms)) };
  const serial = Math.round((value - SERIAL_OF_1970) * 86_400) * 1000;
  if (serial < EARLIEST || serial >= LATEST) return null;
  const iso = new Date(serial).toISOString();
  return { kind: 'wall', text: Number.isInteger(value) ? iso.slice(0, 10) : iso.slice(0, 19) };
}
