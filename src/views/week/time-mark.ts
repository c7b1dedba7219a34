import type { Instant } from '../../domain/time/instant.ts';
import type { Need } from '../../domain/week/closing-need.ts';

/** A closing on the line. */
export interface TimeMark {
  readonly id: string;
  readonly at: Instant;
  /** What stands in the mark: its time without the half of the day, "12:05". */
  readonly label: string;
  readonly need: Need;
  /** Its worksheet. */
  readonly href: string;
}
