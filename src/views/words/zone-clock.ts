import type { Instant } from '../../domain/time/instant.ts';
import { MINUTE } from '../../domain/time/units.ts';
import { zoneOffset } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';

/** What the clock in a zone shows, for a person: "Wed 9:14 AM". */
export function clockIn(zone: Zone, at: Instant): string {
  return new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    weekday: 'short',
    hour: 'numeric',
    minute: '2-digit',
  })
    .format(at)
    .replace(',', '');
}

/** How a zone's clock stands to another's at a moment: "1 hour ahead of", "3 hours 30 minutes behind", "the same as". */
export function clockDifference(zone: Zone, other: Zone, at: Instant): string {
  const minutes = Math.round((zoneOffset(at, zone) - zoneOffset(at, other)) / MINUTE);
  if (minutes === 0) return 'the same as';
  const [hours, rest] = [Math.floor(Math.abs(minutes) / 60), Math.abs(minutes) % 60];
  const words = [hours > 0 && count(hours, 'hour'), rest > 0 && count(rest, 'minute')].filter(Boolean).join(' ');
  return minutes > 0 ? `${words} ahead of` : `${words} behind`;
}

const count = (amount: number, word: string) => `${amount} ${word}${amount === 1 ? '' : 's'}`;
