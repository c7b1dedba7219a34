import type { Instant } from '../../domain/time/instant.ts';
import { sayDuration } from '../../domain/time/say-duration.ts';
import { SECOND } from '../../domain/time/units.ts';

/** "2 d 3 h", "3 h 12 min", "14 min 52 s left" in the last hour, "closed 5 min ago" after that. */
export function timeLeft(close: Instant, now: Instant): string {
  const left = close - now;
  if (left <= 0) return `closed ${sayDuration(-left)} ago`;
  const seconds = Math.ceil(left / SECOND);
  if (seconds < 60) return `${seconds} s left`;
  if (seconds < 60 * 60) return `${Math.floor(seconds / 60)} min ${seconds % 60} s left`;
  return sayDuration(left);
}
