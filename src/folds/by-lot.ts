import type { LotId } from '../domain/lot/lot.ts';

/** What is about each lot, in the order in which it came. */
export function byLot<One extends { readonly lot: LotId }>(all: readonly One[]): ReadonlyMap<LotId, readonly One[]> {
  const map = new Map<LotId, One[]>();
  for (const one of all) {
    const known = map.get(one.lot);
    if (known === undefined) map.set(one.lot, [one]);
    else known.push(one);
  }
  return map;
}
