import { addDays, mondayOf } from '../domain/time/calendar-day.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import { sayDate } from '../domain/time/say-time.ts';

/** A heading and one made-up row as they come from a spreadsheet; its lot closes on a Saturday that is still ahead. */
export function madeUpRow(today: LocalDate): string {
  const saturday = addDays(mondayOf(addDays(today, 2)), 5);
  const cells = [
    ['VIN', '1ZL3H4C21M0104471'],
    ['Year', '2021'],
    ['Make', 'Larkspur'],
    ['Model', 'Hauler 20'],
    ['Miles', '45,210'],
    ['Lot', '118'],
    ['Venue', 'Saguaro Sale Yard'],
    ['Closes', `${sayDate(saturday)} 2:05 PM`],
    ['Price now', '$8,400'],
    ['Retail likely', '$18,000'],
  ] as const;
  return [cells.map(([heading]) => heading), cells.map(([, cell]) => cell)].map((row) => row.join('\t')).join('\n');
}
