import { type Instant, instant } from './instant.ts';
import type { LocalDate, LocalTime } from './local-date.ts';
import { DAY } from './units.ts';
import type { Zone } from './zone.ts';
import { zoneOffset } from './zone-offset.ts';

/** A date and a time of day as written, before anyone knows which moment that is. */
export interface WallTime {
  readonly date: LocalDate;
  readonly time: LocalTime;
  /** 0 to 59; none is 0. */
  readonly second?: number;
}

/**
 * Which moment a wall time is:
 * - `unique`: one, and both ends are it;
 * - `gap`: none, because the clock was put forward past it. Read with the offset after the change it is `earliest`, with
 *   the one before it `latest`;
 * - `overlap`: two, because the clock was put back.
 */
export interface ResolvedTime {
  readonly kind: 'unique' | 'gap' | 'overlap';
  /** The one to plan by: an alert that comes early costs a minute, one that comes late costs a car. */
  readonly earliest: Instant;
  readonly latest: Instant;
}

/**
 * Finds the moment of a wall time in a zone, and checks it by reading the clock back.
 * @throws RangeError for dates before 1970-01-02 or after the year 9999: those who read text refuse them earlier
 */
export function resolveWallTime(wall: WallTime, zone: Zone): ResolvedTime {
  const local = asIfUtc(wall);
  const before = zoneOffset(instant(Math.max(0, local - DAY)), zone);
  const after = zoneOffset(instant(local + DAY), zone);
  const found = [...new Set([before, after])]
    .map((offset) => instant(local - offset))
    .filter((at) => at + zoneOffset(at, zone) === local)
    .sort((a, b) => a - b);
  const [earliest, latest] = found;
  if (earliest === undefined) {
    const [early, late] = [local - after, local - before].sort((a, b) => a - b);
    return { kind: 'gap', earliest: instant(early ?? local), latest: instant(late ?? local) };
  }
  return latest === undefined ? { kind: 'unique', earliest, latest: earliest } : { kind: 'overlap', earliest, latest };
}

/** The wall time as milliseconds, as though it had been read in UTC. */
export function asIfUtc({ date, time, second = 0 }: WallTime): number {
  const at = Date.parse(`${date}T${time}:${String(second).padStart(2, '0')}Z`);
  if (!(at >= DAY)) throw new RangeError(`not a wall time after 1970-01-01: ${date} ${time}:${second}`);
  return at;
}
