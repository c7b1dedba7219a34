import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import type { Instant } from '../domain/time/instant.ts';
import { changesTo, type FactChange } from '../folds/fact-changes.ts';
import type { LotState } from '../folds/lot-state.ts';
import { isSameSale } from '../folds/same-sale.ts';

/**
 * That the car of a row has been seen:
 * - `watched`: this very lot is on the watchlist, or was and has been dropped;
 * - `in-file`: an earlier row of the same file is the same lot;
 * - `in-file-again`: an earlier row of the same file is the same car in another sale;
 * - `another-sale`: the car was watched in an earlier or another sale, so this is a new lot of the same car.
 */
export type SeenAgain =
  | {
      readonly kind: 'watched';
      readonly lot: LotId;
      readonly dropped: boolean;
      readonly changes: readonly FactChange[];
    }
  | { readonly kind: 'in-file'; readonly row: number; readonly changes: readonly FactChange[] }
  | { readonly kind: 'in-file-again'; readonly row: number }
  | { readonly kind: 'another-sale'; readonly lot: LotId };

/** The newest watched lot that is the same car in the same sale; else the newest that is the same car. */
export function seenOnWatchlist(facts: LotFacts, sameCar: readonly LotState[], now: Instant): SeenAgain | null {
  const newestFirst = [...sameCar].sort((a, b) => b.addedAt - a.addedAt);
  const same = newestFirst.find((lot) => isSameSale(lot.facts, facts, now));
  if (same !== undefined) {
    return { kind: 'watched', lot: same.id, dropped: same.dropped, changes: changesTo(same.facts, facts) };
  }
  const [earlier] = newestFirst;
  return earlier === undefined ? null : { kind: 'another-sale', lot: earlier.id };
}
