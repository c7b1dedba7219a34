import type { CantWorkOut } from '../attempt.ts';
import type { Instant } from '../time/instant.ts';
import type { Offer } from './offer.ts';

/** One thing to say, in the words in which it is said. */
export interface Alert {
  /** What it is about; showing another about the same thing replaces it. Never holds a blank. */
  readonly about: string;
  /** Everything this alert says, each by its stable key; recorded once it was shown. */
  readonly keys: readonly string[];
  readonly title: string;
  readonly body: string;
  /** By what remains to be done: a loud one stays until it is answered, where the browser can do that. */
  readonly loudness: 'loud' | 'quiet';
  /** Where a click leads: a route of the companion page. */
  readonly route: string;
  /** What can be answered right on the notice, at most two; for those that are about one lot. */
  readonly offers: readonly Offer[];
  /** The greatest need first: the smaller comes before the greater. */
  readonly rank: readonly [step: number, within: number];
}

export interface AlertPlan {
  /** To be said now, the greatest need first. */
  readonly due: readonly Alert[];
  /** When to look again; null when nothing is ahead. */
  readonly next: Instant | null;
  /** What is due and waits on the Now screen, because the hour has had as many as the user wants. Absent where nothing does. */
  readonly held?: readonly Alert[];
  /** What could not be planned, by a mistake of ours; all the rest is. Absent where everything could. */
  readonly failed?: readonly CantWorkOut[];
}
