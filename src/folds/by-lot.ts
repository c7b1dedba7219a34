import { groupBy } from '../domain/group-by.ts';
import type { LotId } from '../domain/lot/lot.ts';

/** What is about each lot, in the order in which it came. */
export function byLot<One extends { readonly lot: LotId }>(all: readonly One[]): ReadonlyMap<LotId, readonly One[]> {
  return groupBy(all, ({ lot }) => lot);
}
