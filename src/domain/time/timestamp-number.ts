import { type Instant, instant } from './instant.ts';
import type { LocalDate, LocalTime } from './local-date.ts';
import type { WallTime } from './resolve-wall-time.ts';

/** The moments and days that a bare number can stand for, from 1990 to the end of the year 2099. */
const EARLIEST_MS = Date.UTC(1990, 0, 1);
const LATEST_MS = Date.UTC(2100, 0, 1);
/** The day number that spreadsheets give to 1970-01-01, counting from 1899-12-30. */
const SERIAL_OF_1970 = 25_569;

/**
 * A moment or a wall time written as a bare number: Unix seconds or milliseconds, or a spreadsheet's day number, whose
 * fraction is the time of day. A day number without a fraction has no time (`noTime`). Null when it is none of these.
 */
export function timestampNumber(
  text: string,
): { kind: 'moment'; at: Instant } | { kind: 'wall'; wall: WallTime } | { kind: 'no-time' } | null {
  if (!/^\d{5,13}(?:[.,]\d+)?$/.test(text)) return null;
  const value = Number(text.replace(',', '.'));
  const within = (ms: number) => ms >= EARLIEST_MS && ms < LATEST_MS;
  const ms = [value, value * 1000].find(within);
  if (ms !== undefined) return { kind: 'moment', at: instant(Math.floor(ms)) };
  const serialMs = Math.round((value - SERIAL_OF_1970) * 86_400) * 1000;
  if (!within(serialMs)) return null;
  if (Number.isInteger(value)) return { kind: 'no-time' };
  const iso = new Date(serialMs).toISOString();
  const [date, time] = [iso.slice(0, 10) as LocalDate, iso.slice(11, 16) as LocalTime];
  return { kind: 'wall', wall: { date, time, second: Number(iso.slice(17, 19)) } };
}
