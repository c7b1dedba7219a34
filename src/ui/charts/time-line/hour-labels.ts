import { HOUR } from '../../../domain/time/units.ts';
import type { DayFrame } from '../../../domain/week/day-frame.ts';

/** Room that an hour's words take, in pixels. */
const LABEL_WIDTH = 50;
/** At the end of the line "10 PM" needs no room beside it. */
const LEAST_WIDTH = 42;

export interface HourLabel {
  /** Percent of the track. */
  readonly left: number;
  readonly words: string;
}

/** The hours that have room to be named along a track of so many pixels, each with its place in percent. */
export function hourLabels(frame: DayFrame, track: number): readonly HourLabel[] {
  const pixelsAnHour = (HOUR / (frame.to - frame.from)) * track;
  const every = [1, 2, 3, 4, 6].find((hours) => hours * pixelsAnHour >= LABEL_WIDTH) ?? 12;
  return frame.hours
    .filter(({ hour, again }) => hour % every === 0 && (!again || every === 1))
    .map(({ at, hour, again }) => ({
      left: placeIn(frame, at),
      words: again ? `${hourWords(hour)} again` : hourWords(hour),
    }))
    .filter(({ left }) => (left / 100) * track + LEAST_WIDTH <= track);
}

/** Where a moment stands in a day, in percent; what is outside stands at its end. */
export const placeIn = ({ from, to }: DayFrame, at: number): number =>
  Math.min(100, Math.max(0, ((at - from) / (to - from)) * 100));

/** Whether two days have the same hours at the same places: not where a clock change lies between them. */
export const sameHours = (a: DayFrame, b: DayFrame): boolean =>
  a.hours.length === b.hours.length &&
  a.hours.every((mark, i) => mark.hour === b.hours[i]?.hour && mark.at - a.from === b.hours[i].at - b.from);

const hourWords = (hour: number) =>
  hour === 12 ? 'noon' : `${hour % 12 === 0 ? 12 : hour % 12} ${hour < 12 ? 'AM' : 'PM'}`;
