import { lotTitle } from '../../domain/lot/car-name.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { Result } from '../../domain/sale/result.ts';
import { type Review, reviewResult } from '../../domain/sale/review.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { mondayOf } from '../../domain/time/calendar-day.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import { isCanceled } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';

/** A lot with a result, and all that the list shows, sorts and searches by. */
export interface ResultRow {
  readonly lot: LotState;
  readonly result: Result;
  readonly review: Review;
  /** It was won, and the sale was canceled since. */
  readonly canceled: boolean;
  /** When it ended, and on which day and in which week by the store's calendar. */
  readonly at: Instant;
  readonly date: LocalDate;
  readonly week: LocalDate;
  readonly venue: string;
  readonly title: string;
  /** Null when no price paid; absent when none was known. */
  readonly maxBid: Cents | null | undefined;
  readonly haystack: string;
}

/** Makes rows under a setup, each once for as long as its lot does not change. */
export function rowsUnder({ venues, store }: Setup): (lot: LotState) => ResultRow | null {
  const venueById = new Map(venues.map((venue) => [venue.id, venue]));
  const known = new WeakMap<LotState, ResultRow>();
  return (lot) => {
    const noted = lot.sale?.result;
    if (noted === undefined) return null;
    const before = known.get(lot);
    if (before !== undefined) return before;
    const { facts } = lot;
    const venue = facts.venueId === undefined ? undefined : venueById.get(facts.venueId);
    const steps =
      facts.increment === undefined ? venue?.increments : [{ fromCents: 0 as Cents, stepCents: facts.increment }];
    const date = dateIn(store.zone, noted.at);
    const canceled = isCanceled(lot);
    const row: ResultRow = {
      lot,
      canceled,
      result: noted.result,
      review: canceled ? {} : reviewResult(noted.result, noted.maxBidCents, steps),
      at: noted.at,
      date,
      week: mondayOf(date),
      venue: venue?.name ?? facts.venueName ?? 'No venue',
      title: lotTitle(facts),
      maxBid: noted.maxBidCents,
      haystack: haystackOf(lot, venue?.name),
    };
    known.set(lot, row);
    return row;
  };
}

function haystackOf({ facts, sale }: LotState, venue: string | undefined): string {
  return [
    facts.year,
    facts.make,
    facts.model,
    facts.trim,
    facts.vin,
    facts.lotNumber,
    venue ?? facts.venueName,
    facts.sale,
    facts.seller,
    facts.notes,
    sale?.result?.bidder,
  ]
    .filter((part) => part !== undefined)
    .join(' ')
    .toLowerCase();
}
