import { cents } from '../domain/money/cents.ts';
import type { PurseEntry } from '../domain/setup/purse-entry.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LocalDate } from '../domain/time/local-date.ts';

/** The invented dealer's purse: cash for a handful of cars, a line for more, and the rent that is due meanwhile. */
export function demoPurse(now: Instant, saturday: LocalDate): PurseEntry {
  return {
    cashCents: cents(5_200_000),
    countedAt: now,
    lineCents: cents(6_000_000),
    places: 4,
    moves: [
      { date: addDays(saturday, 1), cents: cents(-650_000), what: 'Rent of the lot' },
      { date: addDays(saturday, 1), cents: cents(1_850_000), what: 'A van that is sold' },
    ],
    // With the closings of the Monday after.
    until: addDays(saturday, 3),
  };
}
