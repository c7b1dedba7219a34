import type { LotId } from '../domain/lot/lot.ts';
import type { EntryId } from '../journal/ids.ts';
import type { LotState } from '../journal/states/lot-state.ts';
import { isSameSale } from './same-sale.ts';

/** A lot as it came in, by an entry that was undone later. */
export interface GoneLot {
  readonly lot: LotState;
  /** The last entry that undid its arrival. */
  readonly undone: EntryId;
}

/**
 * For each lot that came in again after its arrival was undone, the ids under which it was known before, the first one
 * first. It is the same lot when it has the VIN and the sale of the one that is gone, or the same lot number where one of the
 * two has no VIN.
 */
export function takenUp(gone: readonly GoneLot[], lots: readonly LotState[]): ReadonlyMap<LotId, readonly LotId[]> {
  const before = new Map<LotId, readonly LotId[]>();
  if (gone.length === 0) return before;
  const inOrder = [...gone].sort((a, b) => (a.lot.bornIn < b.lot.bornIn ? -1 : 1));
  const next = [...inOrder.map(({ lot }) => lot), ...lots].sort((a, b) => (a.bornIn < b.bornIn ? -1 : 1));
  const taken = new Set<LotId>();
  for (const { lot, undone } of inOrder) {
    const successor = next.find((one) => one.bornIn > undone && !taken.has(one.id) && isSameLot(lot, one));
    if (successor === undefined) continue;
    taken.add(successor.id);
    before.set(successor.id, [...(before.get(lot.id) ?? []), lot.id]);
  }
  return before;
}

/** Both came in from something; what matters is the sale, not the clock, so a close counts as it is written. */
function isSameLot({ facts: one }: LotState, { facts: other }: LotState): boolean {
  const sameVin = one.vin !== undefined && one.vin === other.vin;
  const vinsDiffer = one.vin !== undefined && other.vin !== undefined && !sameVin;
  const sameNumber = one.lotNumber !== undefined && one.lotNumber === other.lotNumber;
  return (sameVin || (sameNumber && !vinsDiffer)) && isSameSale(one, other, Number.NEGATIVE_INFINITY);
}
