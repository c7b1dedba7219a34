import type { Instant } from '../../domain/time/instant.ts';
import { sayClock, sayTime } from '../../domain/time/say-time.ts';
import { DAY } from '../../domain/time/units.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { countWords } from '../../views/words/count-words.ts';

/** How this computer stands to its team. */
export interface Step {
  /** When everything was last sent and fetched; null when it never was. */
  readonly inStepAt: Instant | null;
  /** Entries of this computer that the server does not have. */
  readonly notSent: number;
  /** When the first of them was written; null when there is none. */
  readonly notSentSince: Instant | null;
  /** Why sending or fetching stopped the last time; null when it did not. */
  readonly stopped: string | null;
}

/** What holds for now counts as "in step" so long after the last meeting, in milliseconds: the standing wake is every two minutes. */
const FRESH = 5 * 60_000;

/**
 * Whether what is here of the others may be taken for what they did: only shortly after everything was sent and fetched. No
 * screen may say what the others did not do when this is false.
 */
export function isInStep({ inStepAt, notSent, stopped }: Step, now: Instant): boolean {
  return inStepAt !== null && notSent === 0 && stopped === null && now - inStepAt < FRESH && inStepAt <= now;
}

/** "In step, 2:05 PM", "3 entries not sent since 1:40 PM", "Not in step since 1:40 PM", with a day where it was another. */
export function sayStep(step: Step, zone: Zone, now: Instant): string {
  const time = (at: Instant) => (Math.abs(now - at) < DAY / 2 ? sayClock(at, zone) : sayTime(at, zone, now));
  const { notSent, notSentSince, inStepAt } = step;
  if (notSent > 0 && notSentSince !== null)
    return `${countWords(notSent, 'entry', 'entries')} not sent since ${time(notSentSince)}`;
  if (inStepAt === null) return 'Not in step yet';
  return `${isInStep(step, now) ? 'In step,' : 'Not in step since'} ${time(inStepAt)}`;
}
