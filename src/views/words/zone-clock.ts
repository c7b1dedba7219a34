import type { Instant } from '../../domain/time/instant.ts';
import { dayName, sayClock } from '../../domain/time/say-time.ts';
import { MINUTE } from '../../domain/time/units.ts';
import { wallClock } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { zoneOffset } from '../../domain/time/zone-offset.ts';

/** What the clock in a zone shows, for a person: "Wed 9:14 AM". */
export const clockIn = (zone: Zone, at: Instant): string =>
  `${dayName(wallClock(at, zone).weekday).slice(0, 3)} ${sayClock(at, zone)}`;

/** How a zone's clock stands to another's at a moment: "1 hour ahead of", "3 hours 30 minutes behind", "the same as". */
export function clockDifference(zone: Zone, other: Zone, at: Instant): string {
  const minutes = Math.round((zoneOffset(at, zone) - zoneOffset(at, other)) / MINUTE);
  if (minutes === 0) return 'the same as';
  const [hours, rest] = [Math.floor(Math.abs(minutes) / 60), Math.abs(minutes) % 60];
  const words = [hours > 0 && count(hours, 'hour'), rest > 0 && count(rest, 'minute')].filter(Boolean).join(' ');
  return minutes > 0 ? `${words} ahead of` : `${words} behind`;
}

const count = (amount: number, word: string) => `${amount} ${word}${amount === 1 ? '' : 's'}`;
