import { getTimezoneOffset } from 'date-fns-tz/getTimezoneOffset';
import type { Instant } from './instant.ts';
import { intlOffset } from './intl-offset.ts';
import { DAY } from './units.ts';
import type { Zone } from './zone.ts';

/** With a day before and a day after, shorter than the time between two changes of any zone. */
const STRETCH = 4 * DAY;

/** By zone and stretch, the offset all through it; null where the clock is changed in it or a day from it. */
const offsets = new Map<Zone, Map<number, number | null>>();

/**
 * How far the wall clock in `zone` is ahead of UTC at a moment, in milliseconds; negative in the Americas. Asked for
 * thousands of moments of one week it asks for two stretches.
 *
 * The offset is date-fns-tz's, but for the days around a change. The library is given what a clock on the wall shows, not
 * a moment: of a moment within some 15 hours of a change it gives the offset of the wrong side, and of a wall time that
 * comes twice the one or the other by the zone that this machine is set to. There the clock is read from Intl.
 */
export function zoneOffset(at: Instant, zone: Zone): number {
  const stretch = Math.floor(at / STRETCH);
  const ofZone = offsets.get(zone) ?? new Map<number, number | null>();
  if (ofZone.size === 0) offsets.set(zone, ofZone);
  let offset = ofZone.get(stretch);
  if (offset === undefined) {
    offset = steadyOffset(stretch * STRETCH, zone);
    ofZone.set(stretch, offset);
  }
  return offset ?? intlOffset(at, zone);
}

/** What the library looks at lies within 14 hours of what it is asked: a day away it can't see a change in the stretch. */
function steadyOffset(from: number, zone: Zone): number | null {
  const before = getTimezoneOffset(zone, new Date(from - DAY));
  return before === getTimezoneOffset(zone, new Date(from + STRETCH + DAY)) ? before : null;
}
