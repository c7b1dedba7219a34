import { Temporal } from 'temporal-polyfill';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import type { Zone } from '../../src/domain/time/zone.ts';

/** A moment at which the clock of a zone is changed. */
export interface ClockChange {
  readonly at: Instant;
  readonly zone: Zone;
}

/** Every change of a zone's clock in these years, the last one included, as Temporal finds them. */
export function clockChanges(zone: Zone, first: number, last: number): ClockChange[] {
  const changes: ClockChange[] = [];
  let next = Temporal.PlainDate.from({ year: first, month: 1, day: 1 })
    .toZonedDateTime(zone)
    .getTimeZoneTransition('next');
  for (; next !== null && next.year <= last; next = next.getTimeZoneTransition('next'))
    changes.push({ at: instant(next.epochMilliseconds), zone });
  return changes;
}

/** The offset of a zone at a moment in milliseconds, by Temporal. */
export const temporalOffset = (at: number, zone: Zone): number =>
  Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone).offsetNanoseconds / 1e6;
