import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { type ShowKey, shows } from './list-filter.ts';
import { readSearch, searched } from './lot-search.ts';
import type { LotWorks } from './standing.ts';

export interface ListView {
  readonly show: ShowKey;
  /** The key of the column by which it is sorted. */
  readonly sort: string;
  readonly descending: boolean;
  readonly search: string;
  /** Whether the lots of one venue stand together. */
  readonly byVenue: boolean;
}

/** What a lot is sorted by; one without it comes last. */
export type SortValue = number | string | null;
/** Gives what each lot is sorted by. */
export type SortBy = (from: LotWorks & { readonly now: Instant }) => (lot: LotState) => SortValue;

interface OrderFrom {
  readonly works: LotWorks;
  readonly now: Instant;
  readonly by: SortBy;
  /** Whether a lot's max bid is known already; see `shows`. */
  readonly isKnown?: (lot: LotState) => boolean;
}

/**
 * The lots a view shows, in its order. Lots with nothing to sort by come last in either direction; ties fall back to
 * the close, then to the id, so that the order never flickers.
 */
export function orderLots(
  lots: readonly LotState[],
  { show, descending, search, byVenue }: ListView,
  { works, now, by, isKnown }: OrderFrom,
): LotState[] {
  const shown = lots.filter((lot) => shows(lot, show, works, now, isKnown));
  const direction = descending ? -1 : 1;
  const key = by({ ...works, now });
  const keyed = searched(shown, readSearch(search)).map((lot) => ({ lot, key: key(lot) }));
  keyed.sort(
    (a, b) =>
      (byVenue ? compareKeys(venueOf(a.lot) || null, venueOf(b.lot) || null, 1) : 0) ||
      compareKeys(a.key, b.key, direction) ||
      compareCloses(a.lot, b.lot) ||
      (a.lot.id < b.lot.id ? -1 : 1),
  );
  return keyed.map(({ lot }) => lot);
}

/** The venue as the list names it; empty where none is set. */
export const venueOf = ({ facts }: LotState): string => facts.venueName ?? facts.venueId ?? '';

function compareKeys(a: SortValue, b: SortValue, direction: number): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  if (a === b) return 0;
  return a < b ? -direction : direction;
}

function compareCloses(a: LotState, b: LotState): number {
  return (a.facts.close?.instant ?? Number.MAX_SAFE_INTEGER) - (b.facts.close?.instant ?? Number.MAX_SAFE_INTEGER);
}
