import type { ComponentChildren } from 'preact';
import type { RushBand } from '../../domain/rush/rush-bands.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { Need } from '../../domain/week/closing-need.ts';
import type { DayFrame } from '../../domain/week/day-frame.ts';

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

/** One day of the line. */
export interface TimeRow<Mark extends TimeMark> {
  readonly frame: DayFrame;
  readonly bands: readonly RushBand[];
  /** In the order of their times. */
  readonly marks: readonly Mark[];
  readonly collisions: readonly { readonly closings: readonly Mark[] }[];
  /** What stands beside it. */
  readonly head: ComponentChildren;
}

/** What the line asks of whoever draws it. */
export interface TimeWords<Mark extends TimeMark> {
  /** Everything there is to know of one closing, in a sentence. */
  readonly ofMark: (mark: Mark) => string;
  /** Of a pile too high to be drawn. */
  readonly ofCrowd: (marks: readonly Mark[]) => string;
  /** Where a pile too high to be drawn is shown one by one. */
  readonly crowdHref: (marks: readonly Mark[]) => string;
}
