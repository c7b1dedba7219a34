import { compareWithWatched, type SeenBefore } from '../capture/draft/seen-before.ts';
import type { LotFacts } from '../domain/lot/lot.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Store } from '../store/store.ts';

/** What the watchlist knows of a lot: by its VIN among all lots ever watched, without one among `recent` by its page. */
export async function lookUpSeen(
  store: Store,
  recent: readonly LotState[],
  facts: LotFacts,
  readAt: Instant,
): Promise<SeenBefore> {
  const byVin = facts.vin === undefined ? [] : await store.lotsByVin(facts.vin);
  const known = new Set(byVin.map(({ id }) => id));
  return compareWithWatched(facts, [...byVin, ...recent.filter(({ id }) => !known.has(id))], readAt);
}
