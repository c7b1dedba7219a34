import type { CloseDoubt, CloseTime } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Zone } from '../domain/time/zone.ts';

const formatters = new Map<string, Intl.DateTimeFormat>();

function formatter(zone: Zone, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${zone} ${JSON.stringify(options)}`;
  let known = formatters.get(key);
  if (known === undefined) {
    known = new Intl.DateTimeFormat('en-US', { timeZone: zone, ...options });
    formatters.set(key, known);
  }
  return known;
}

/** "Sat, Nov 28, 12:05 PM" on the store's clock. */
export const inStoreTime = (at: Instant, zone: Zone): string =>
  formatter(zone, { weekday: 'short', month: 'short', day: 'numeric', hour: 'numeric', minute: '2-digit' }).format(at);

/** "12:05 PM" on the store's clock. */
export const storeClock = (at: Instant, zone: Zone): string =>
  formatter(zone, { hour: 'numeric', minute: '2-digit' }).format(at);

/** "Sat, Nov 28" in the store's zone. */
export const storeDay = (at: Instant, zone: Zone): string =>
  formatter(zone, { weekday: 'short', month: 'short', day: 'numeric' }).format(at);

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** "2 d 3 h", "3 h 12 min", "4:07" in the last quarter of an hour, "closed 5 min ago" once it is past. */
export function timeLeft(close: Instant, now: Instant): string {
  const left = close - now;
  if (left <= 0) return `closed ${span(-left)} ago`;
  if (left < 15 * MINUTE) {
    const seconds = Math.ceil(left / SECOND);
    return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  }
  return span(left);
}

function span(ms: number): string {
  if (ms < MINUTE) return 'less than a minute';
  if (ms < HOUR) return `${Math.floor(ms / MINUTE)} min`;
  if (ms < DAY) return `${Math.floor(ms / HOUR)} h ${Math.floor((ms % HOUR) / MINUTE)} min`;
  return `${Math.floor(ms / DAY)} d ${Math.floor((ms % DAY) / HOUR)} h`;
}

const DOUBT_WORDS: Record<CloseDoubt, string> = {
  gap: 'That night the clocks go forward and this time does not exist.',
  overlap: 'That night the clocks go back and this time comes twice.',
  abbreviation: 'The zone letters do not fit the date or the venue.',
  'no-zone': 'Nothing says which zone this is in; the store’s was taken.',
  'zone-data': 'This zone changed its rules lately and this browser may not know it yet.',
};

/** Why a close deserves a second look, in sentences. */
export const wordsOfDoubt = ({ doubts }: CloseTime): string => doubts.map((doubt) => DOUBT_WORDS[doubt]).join(' ');
