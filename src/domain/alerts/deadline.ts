import type { Instant } from '../time/instant.ts';

/**
 * Anything with a last moment that is no closing: the end of a dispute window, a title that is due. Whoever knows of it
 * gives it to the plan for as long as something is left to do, and leaves it out from then on.
 */
export interface Deadline {
  /** Stable and its own among all deadlines, without blanks, such as `dispute-01J…`. */
  readonly key: string;
  /** The last moment. */
  readonly at: Instant;
  /** How many minutes before it to call, the earliest call first; each is said once. */
  readonly leads: readonly number[];
  /** What it is about, short, to stand before ": due in 2 h", such as "Dispute window, 2021 Larkspur Hauler". */
  readonly title: string;
  /** What is left to do, in a sentence or two. */
  readonly body: string;
  /** Where a click leads: a route of the companion page, such as `#/disputes/01J…`. */
  readonly route: string;
  /** Little is left to do: it is said softly. */
  readonly quiet?: boolean;
}
