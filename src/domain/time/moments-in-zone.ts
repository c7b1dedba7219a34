import type { CloseDoubt } from './close-time.ts';
import { type Instant, instant } from './instant.ts';
import { asIfUtc, resolveWallTime, type WallTime } from './resolve-wall-time.ts';
import type { Zone } from './zone.ts';
import { missedChange } from './zone-data.ts';

/** The moments that a wall time can mean, earliest first and never none, and why there is more than one. */
export interface Moments {
  readonly zone: Zone;
  readonly moments: readonly Instant[];
  readonly doubts: readonly CloseDoubt[];
}

/** What a wall time can mean in one zone: two moments in a gap, in an overlap, or where this runtime's rules are old. */
export function momentsIn(zone: Zone, wall: WallTime): Moments {
  const { kind, earliest, latest } = resolveWallTime(wall, zone);
  const missed = missedChange(zone);
  if (missed !== null && earliest >= missed.since) {
    const moments = distinct([instant(asIfUtc(wall) - missed.offset), earliest, latest]);
    return { zone, moments, doubts: moments.length > 1 ? ['zone-data'] : [] };
  }
  return { zone, moments: distinct([earliest, latest]), doubts: kind === 'unique' ? [] : [kind] };
}

/** Several readings as one, in `zone`; with `because` as the reason when they differ. */
export function together(zone: Zone, readings: readonly Moments[], because: CloseDoubt): Moments {
  const moments = distinct(readings.flatMap((reading) => reading.moments));
  const own = readings.flatMap((reading) => reading.doubts);
  const differ = readings.some((reading) => reading.moments.join() !== moments.join());
  return { zone, moments, doubts: [...new Set(differ ? [because, ...own] : own)] };
}

const distinct = (moments: readonly Instant[]): Instant[] => [...new Set(moments)].sort((a, b) => a - b);
