import type { Instant } from '../../../src/domain/time/instant.ts';
import type { Zone } from '../../../src/domain/time/zone.ts';

/** Whether a sentence names the day that a moment is in, as "Nov 28". */
export const dayNamedIn = (sentence: string, at: Instant, place: Zone): boolean =>
  sentence.includes(new Intl.DateTimeFormat('en-US', { timeZone: place, month: 'short', day: 'numeric' }).format(at));
