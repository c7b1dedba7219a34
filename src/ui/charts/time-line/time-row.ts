import type { ComponentChildren } from 'preact';
import type { RushBand } from '../../../domain/rush/rush-bands.ts';
import type { DayFrame } from '../../../domain/week/day-frame.ts';
import type { TimeMark } from '../../../views/week/time-mark.ts';

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
