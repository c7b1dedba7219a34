import type { LocalTime } from '../../domain/time/local-date.ts';
import { MINUTES_A_DAY } from '../../domain/time/units.ts';

/** Minutes since midnight. */
export function minutesOfDay(time: LocalTime): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 60 + minutes;
}

/** A time of day as people say it: "4 PM", "6:30 PM", "noon". */
export const timeInWords = (time: LocalTime): string => minutesInWords(minutesOfDay(time));

/** The same for minutes since midnight; those of another day say so. */
export function minutesInWords(minutes: number): string {
  const ofDay = ((minutes % MINUTES_A_DAY) + MINUTES_A_DAY) % MINUTES_A_DAY;
  const [hour, rest] = [Math.floor(ofDay / 60), ofDay % 60];
  const figure = `${hour % 12 === 0 ? 12 : hour % 12}${rest === 0 ? '' : `:${String(rest).padStart(2, '0')}`}`;
  const time = ofDay === 12 * 60 ? 'noon' : `${figure} ${hour < 12 ? 'AM' : 'PM'}`;
  return minutes < 0 ? `${time} the day before` : minutes >= MINUTES_A_DAY ? `${time} the day after` : time;
}
