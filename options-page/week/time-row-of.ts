import type { ComponentChildren } from 'preact';
import { collisionsOf } from '../../src/domain/rush/collisions.ts';
import type { RushCalendar } from '../../src/domain/rush/rush-bands.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import type { DayFrame } from '../../src/domain/week/day-frame.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { TimeRow, TimeWords } from '../../src/ui/charts/time-line/time-row.ts';
import type { Standing } from '../../src/views/lots/standing.ts';
import { type Closing, isOpen } from '../../src/views/week/closing.ts';
import { closingWords, crowdWords } from '../../src/views/week/closing-words.ts';

/** A day of the time line. */
export function timeRowOf(
  frame: DayFrame,
  ofDay: readonly Closing[],
  around: { readonly setup: Setup; readonly calendar: RushCalendar },
  head: ComponentChildren,
): TimeRow<Closing> {
  const { setup, calendar } = around;
  return {
    frame,
    bands: calendar.bandsOn(frame.date),
    marks: ofDay,
    collisions: collisionsOf(ofDay.filter(isOpen), setup.alerts.reactionMinutes),
    head,
  };
}

/** The line's words; a pile opens the day at its first closing. */
export function timeWordsOf(
  setup: Setup,
  standingOf: (lot: LotState) => Standing | undefined,
  callsOf: (lot: LotState) => readonly Instant[],
): TimeWords<Closing> {
  const { zone } = setup.store;
  return {
    ofMark: (closing) => closingWords(closing, standingOf(closing.lot), callsOf(closing.lot), zone),
    ofCrowd: (closings) => crowdWords(closings, zone),
    crowdHref: ([first]) => (first === undefined ? '#/week' : `#/week/${dateIn(zone, first.close)}/${first.time}`),
  };
}
