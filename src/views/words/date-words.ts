import type { LocalDate } from '../../domain/time/local-date.ts';

// Intl writes it because it is there; date-fns would be 20 KB more. A calendar date belongs to no zone, and noon in UTC is on
// that date for the one formatter that is asked.
const at = (date: LocalDate) => new Date(`${date}T12:00Z`);
const short = new Intl.DateTimeFormat('en-US', { dateStyle: 'medium', timeZone: 'UTC' });
const long = new Intl.DateTimeFormat('en-US', { dateStyle: 'full', timeZone: 'UTC' });

/** "Mar 1, 2027". */
export const dateInWords = (date: LocalDate): string => short.format(at(date));

/** "Monday, March 1, 2027". */
export const dayInWords = (date: LocalDate): string => long.format(at(date));
