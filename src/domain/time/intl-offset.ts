import type { Instant } from './instant.ts';
import { HOUR } from './units.ts';
import type { Zone } from './zone.ts';

/** By zone and hour since 1970, the offset all through that hour; null where the clock is changed within it. */
const offsets = new Map<Zone, Map<number, number | null>>();

/**
 * The offset of `zone` at exactly this moment, in milliseconds, read off what Intl shows. It is our own because date-fns-tz
 * has none for a moment (see zone-offset.ts) but by way of its formatted times, and those are 28 KB.
 */
export function intlOffset(at: Instant, zone: Zone): number {
  const hour = Math.floor(at / HOUR);
  const ofZone = offsets.get(zone) ?? new Map<number, number | null>();
  if (ofZone.size === 0) offsets.set(zone, ofZone);
  let offset = ofZone.get(hour);
  if (offset === undefined) {
    const begins = readOffset(hour * HOUR, zone);
    offset = begins === readOffset((hour + 1) * HOUR, zone) ? begins : null;
    ofZone.set(hour, offset);
  }
  return offset ?? readOffset(at, zone);
}

const FIELDS = /^(\d+)\/(\d+)\/(\d+), (\d+):(\d+):(\d+)$/;

function readOffset(at: number, zone: Zone): number {
  const shown = FIELDS.exec(formatter(zone).format(at));
  if (shown === null) throw new Error(`Intl printed a date in a form of its own for ${zone}`);
  const [, month, day, year, hour, minute, second] = shown.map(Number);
  const wall = Date.UTC(year ?? 0, (month ?? 0) - 1, day, hour, minute, second);
  return wall - Math.floor(at / 1000) * 1000;
}

/** A formatter costs some 50 µs to make and 2 µs to use. */
const formatters = new Map<Zone, Intl.DateTimeFormat>();

function formatter(zone: Zone): Intl.DateTimeFormat {
  const known = formatters.get(zone);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    calendar: 'gregory',
    numberingSystem: 'latn',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  formatters.set(zone, made);
  return made;
}
