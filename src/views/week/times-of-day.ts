import type { RushBand } from '../../domain/rush/rush-bands.ts';
import { type Instant, instant } from '../../domain/time/instant.ts';
import type { LocalTime } from '../../domain/time/local-date.ts';
import { wallClock } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { TimesOfDay } from '../../domain/week/hours-shown.ts';
import type { Closing } from './closing.ts';

/** What a time line has to have room for: closings and busy hours, by the store's clock. */
export function* timesOfDay(
  closings: readonly Closing[],
  bands: readonly RushBand[],
  zone: Zone,
): Generator<TimesOfDay> {
  for (const { time } of closings) yield { from: time, last: time };
  for (const { from, to } of bands)
    yield { from: wallClock(from, zone).time, last: wallClock(instant(to - 1), zone).time };
}

/** Moments by the store's clock. */
export const clockTimes = (moments: readonly Instant[], zone: Zone): readonly LocalTime[] =>
  moments.map((at) => wallClock(at, zone).time);
