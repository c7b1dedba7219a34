import type { LocalDate } from '../time/local-date.ts';
import { sayDate } from '../time/say-time.ts';

/** "Sat Nov 28", with its year where that is another than today's. */
export const dateInWords =
  (today: LocalDate) =>
  (date: LocalDate): string =>
    date.slice(0, 4) === today.slice(0, 4) ? sayDate(date) : `${sayDate(date)}, ${date.slice(0, 4)}`;
