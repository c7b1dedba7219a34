import { attempt } from '../domain/attempt.ts';
import type { LotId } from '../domain/lot/lot.ts';
import { isSameClose } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Entry } from '../journal/entry.ts';
import { rowOf } from '../journal/happening.ts';
import type { LotState } from '../journal/states/lot-state.ts';
import { lotOfSubject } from '../journal/subject.ts';
import { notedBy } from './noted-by.ts';
import { saleAfterMove } from './sale-after-move.ts';
import { countingInOrder } from './undo.ts';

/**
 * Every lot as the journal leaves it. The entries may come in any order, from any number of devices, and twice: the
 * state depends only on the set of them. Where two devices changed the same field, the entry with the greater id wins.
 */
export function foldLots(entries: Iterable<Entry>): Map<LotId, LotState> {
  const lots = new Map<LotId, LotState>();
  for (const entry of countingInOrder(entries)) applyToLots(lots, entry);
  return lots;
}

/**
 * Applies an entry that counts, and sorts after all that were applied before.
 * @returns false when it could not be applied: then it costs only itself, and the lot stays as it was
 */
export function applyToLots(lots: Map<LotId, LotState>, entry: Entry): boolean {
  for (const lot of lotsBornIn(entry)) if (!lots.has(lot.id)) lots.set(lot.id, lot);
  const id = lotOfSubject(entry.subject);
  const before = id === null ? undefined : lots.get(id);
  // A change to a lot that is not here (its arrival was undone, or is still on another device) waits in the journal.
  if (before === undefined) return true;
  const after = attempt(() => changedLot(before, entry));
  if (after.ok) lots.set(before.id, after.value);
  return after.ok;
}

/** The lots that an entry brings in; none when it is of another kind. */
export function lotsBornIn(entry: Entry): LotState[] {
  const row = rowOf(entry.happening);
  return row.about === 'arrival' ? row.fold(entry.happening, notedBy(entry)) : [];
}

/** One lot, from the state it was born in and every entry about it that counts, in the order of their ids. */
export function foldLot(born: LotState, entries: readonly Entry[]): LotState {
  const apply = (lot: LotState, entry: Entry): LotState => {
    const after = attempt(() => changedLot(lot, entry));
    return after.ok ? after.value : lot;
  };
  return entries.filter((entry) => entry.id > born.bornIn).reduce(apply, born);
}

/** A lot after an entry about it that counts; the same object when the entry changes nothing of it. */
export function changedLot(lot: LotState, entry: Entry): LotState {
  const row = rowOf(entry.happening);
  const change = row.about === 'lot' ? row.fold(lot, entry.happening, notedBy(entry), entry) : null;
  return change === null ? lot : goesOn(lot, { ...lot, ...change, changedAt: entry.at }, entry);
}

/** A lot whose close has moved, by whatever entry, is still going on. */
function goesOn(before: LotState, after: LotState, { at }: Entry): LotState {
  const [from, to] = [before.facts.close?.instant, after.facts.close?.instant];
  if (from === to) return after;
  const moved = withMove(after, { from, to }, at);
  if (moved.sale === undefined) return moved;
  const sale = saleAfterMove(moved.sale, { from, to }, at);
  return sale === moved.sale ? moved : { ...moved, sale };
}

/** Remembers where the close stood before. A page that is read every minute moves it by seconds, which are one move together. */
function withMove(
  lot: LotState,
  { from, to }: { readonly from: Instant | undefined; readonly to: Instant | undefined },
  at: Instant,
): LotState {
  if (from === undefined || to === undefined) return lot;
  const began = lot.clock?.moved?.from ?? from;
  const isSmall = isSameClose(from, to) && isSameClose(began, to);
  return { ...lot, clock: { ...lot.clock, moved: { from: isSmall ? began : from, at } } };
}
