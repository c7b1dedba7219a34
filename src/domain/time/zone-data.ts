import { type Instant, instant } from './instant.ts';
import { HOUR } from './units.ts';
import type { Zone } from './zone.ts';
import { zoneOffset } from './zone-offset.ts';

/** A place that stopped changing its clocks: from when on, and the offset that it keeps, in hours. */
interface Kept {
  readonly since: number;
  readonly hours: number;
}

/** The first of their nights without a change: 2 AM in Winnipeg. */
const NOVEMBER = Date.UTC(2026, 10, 1, 7);
/** tz database releases 2026b to 2026e. */
const kept = (hours: number): Kept => ({ since: NOVEMBER, hours });
/** tz database release 2026d: Morocco keeps UTC. */
const MOROCCO: Kept = { since: Date.UTC(2026, 8, 20, 1), hours: 0 };

/** Under their own names and the older names for the same clock. */
const KEPT: Readonly<Record<string, Kept>> = {
  'America/Vancouver': kept(-7),
  'Canada/Pacific': kept(-7),
  'America/Edmonton': kept(-6),
  'America/Yellowknife': kept(-6),
  'Canada/Mountain': kept(-6),
  'America/Inuvik': kept(-6),
  'America/Winnipeg': kept(-5),
  'America/Rainy_River': kept(-5),
  'Canada/Central': kept(-5),
  'Africa/Casablanca': MOROCCO,
  'Africa/El_Aaiun': MOROCCO,
};

/** In December 2026 an older runtime shows another offset in each of them. */
const PROBE = instant(Date.UTC(2026, 11, 15));

/** What this runtime does not know about a zone. */
export interface MissedChange {
  /** From then on its clock may be shown wrong. */
  readonly since: Instant;
  /** The offset that the place has kept since then, in milliseconds. */
  readonly offset: number;
}

/**
 * The last change of a zone's rules when this runtime does not know it yet; null when the zone is none of those, or the
 * runtime's data is new enough. A change that was decided after this table was written can't be known here.
 */
export function missedChange(zone: Zone): MissedChange | null {
  const known = KEPT[zone];
  if (known === undefined || zoneOffset(PROBE, zone) === known.hours * HOUR) return null;
  return { since: instant(known.since), offset: known.hours * HOUR };
}

/** Whether clock changes that this runtime shows for `zone` at a time are out of date. */
export const dataIsOld = (zone: Zone, atLeast: number): boolean => {
  const missed = missedChange(zone);
  return missed !== null && atLeast >= missed.since;
};
