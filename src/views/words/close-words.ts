import type { CloseDoubt, CloseTime } from '../../domain/time/close-time.ts';
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

const DOUBT_WORDS: Record<CloseDoubt, string> = {
  gap: 'That night the clocks go forward and this time does not exist.',
  overlap: 'That night the clocks go back and this time comes twice.',
  abbreviation: 'The zone letters do not fit the date or the venue.',
  'no-zone': 'Nothing says which zone this is in; the store’s was taken.',
  'zone-data': 'This zone changed its rules lately and this browser may not know it yet.',
};

/** Why a close deserves a second look, in sentences. */
export const wordsOfDoubt = ({ doubts }: CloseTime): string => doubts.map((doubt) => DOUBT_WORDS[doubt]).join(' ');
