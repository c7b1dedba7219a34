import type { LotFacts, LotId } from '../../domain/lot/lot.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { changesTo, type FactChange } from '../../folds/fact-changes.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { isSamePage, isSameSale } from '../../folds/same-sale.ts';

/**
 * What the watchlist already knows of a drafted lot:
 * - `new`: nothing;
 * - `same`: this very lot is watched; `changes` is what the page says otherwise now. Nothing is changed by this;
 * - `earlier-life`: the car was watched before, in another sale or at an earlier close; the newest such lot comes first.
 */
export type SeenBefore =
  | { readonly kind: 'new' }
  | { readonly kind: 'same'; readonly lot: LotState; readonly changes: readonly FactChange[] }
  | { readonly kind: 'earlier-life'; readonly lots: readonly LotId[] };

/**
 * Compares the facts of a draft with lots that may be the same car.
 * @param readAt when the page was read, which tells a lot that has closed from one that was put off
 */
export function compareWithWatched(facts: LotFacts, lots: readonly LotState[], readAt: Instant): SeenBefore {
  const alike = lots.filter((lot) => isSameCar(facts, lot.facts)).sort((a, b) => b.addedAt - a.addedAt);
  const same = alike.find((lot) => isSameSale(lot.facts, facts, readAt));
  if (same !== undefined) {
    // Where a lot is found again is no news; the address it was first read from stays.
    const changes = changesTo(same.facts, facts).filter(
      ({ field, before }) => field !== 'pageUrl' || before === undefined,
    );
    return { kind: 'same', lot: same, changes };
  }
  const earlier = alike.filter((lot) => facts.vin !== undefined && lot.facts.vin === facts.vin);
  return earlier.length === 0 ? { kind: 'new' } : { kind: 'earlier-life', lots: earlier.map((lot) => lot.id) };
}

/** The VIN decides. Without one on either side, the same page and lot number do. */
function isSameCar(now: LotFacts, watched: LotFacts): boolean {
  if (now.vin !== undefined && watched.vin !== undefined) return now.vin === watched.vin;
  return isSamePage(now.pageUrl, watched.pageUrl) && now.lotNumber === watched.lotNumber;
}
