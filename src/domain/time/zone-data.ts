import { instant } from './instant.ts';
import { HOUR } from './units.ts';
import type { Zone } from './zone.ts';
import { zoneOffset } from './zone-offset.ts';

/** From here on these places no longer put the clock back: tz database releases 2026b to 2026e. */
const KEPT_SINCE = Date.UTC(2026, 10, 1);

/** The offset they keep, in hours, under their own names and the older names for the same clock. */
const KEPT: Readonly<Record<string, number>> = {
  'America/Vancouver': -7,
  'Canada/Pacific': -7,
  'America/Edmonton': -6,
  'America/Yellowknife': -6,
  'Canada/Mountain': -6,
  'America/Inuvik': -6,
  'America/Winnipeg': -5,
  'America/Rainy_River': -5,
  'Canada/Central': -5,
};

/**
 * The offset, in milliseconds, that `zone` has kept all year since November 2026 when this runtime does not know it yet
 * and still puts its clock back; null when the zone is none of those, or the runtime's data is new enough.
 */
export function offsetMissedByOldData(zone: Zone): number | null {
  const hours = KEPT[zone];
  if (hours === undefined) return null;
  return zoneOffset(instant(Date.UTC(2026, 11, 15)), zone) === hours * HOUR ? null : hours * HOUR;
}

/** Whether clock changes that this runtime shows for `zone` at a time are out of date. */
export const dataIsOld = (zone: Zone, atLeast: number): boolean =>
  atLeast >= KEPT_SINCE && offsetMissedByOldData(zone) !== null;
