import type { Evidence } from '../domain/lot/evidence.ts';
import type { LotFacts, LotField, LotId } from '../domain/lot/lot.ts';
import { stillUnread } from '../domain/lot/unread-cell.ts';
import type { Entry } from '../journal/entry.ts';
import { lotOfSubject } from '../journal/subject.ts';
import { afterSaleAfter } from './fold-after-sale.ts';
import { attachmentsAfter } from './fold-attachments.ts';
import { withBidding } from './fold-bidding.ts';
import { afterClock } from './fold-clock.ts';
import { saleAfter, saleAfterMove } from './fold-sale.ts';
import type { LotState } from './lot-state.ts';
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

/** Applies an entry that counts, and sorts after all that were applied before. */
export function applyToLots(lots: Map<LotId, LotState>, entry: Entry): void {
  const { happening } = entry;
  if (happening.kind === 'lots-added') {
    for (const lot of lotsBornIn(entry)) if (!lots.has(lot.id)) lots.set(lot.id, lot);
    return;
  }
  const id = lotOfSubject(entry.subject);
  const before = id === null ? undefined : lots.get(id);
  // A change to a lot that is not here (its arrival was undone, or is still on another device) waits in the journal.
  if (before !== undefined) lots.set(before.id, changedLot(before, entry));
}

/** The lots that an entry brings in; none when it is of another kind. */
export function lotsBornIn(entry: Entry): LotState[] {
  const { happening } = entry;
  if (happening.kind !== 'lots-added') return [];
  return happening.lots.map(({ id, facts, evidence }) => ({
    id,
    facts,
    evidence,
    source: happening.source,
    addedAt: entry.at,
    changedAt: entry.at,
    dropped: false,
    bornIn: entry.id,
  }));
}

/** One lot, from the state it was born in and every entry about it that counts, in the order of their ids. */
export function foldLot(born: LotState, entries: readonly Entry[]): LotState {
  return entries.filter((entry) => entry.id > born.bornIn).reduce(changedLot, born);
}

/** A lot after an entry about it that counts. */
export function changedLot(lot: LotState, entry: Entry): LotState {
  return withBidding(lot, goesOn(lot, changed(lot, entry), entry), entry);
}

/** A lot whose close has moved is still going on. */
function goesOn(before: LotState, after: LotState, { at }: Entry): LotState {
  const [from, to] = [before.facts.close?.instant, after.facts.close?.instant];
  if (from === to || after.sale === undefined) return after;
  const sale = saleAfterMove(after.sale, { from, to }, at);
  return sale === after.sale || sale === undefined ? after : { ...after, sale };
}

function changed(lot: LotState, entry: Entry): LotState {
  const { happening } = entry;
  switch (happening.kind) {
    case 'lot-dropped':
      return { ...lot, dropped: true, changedAt: entry.at };
    case 'lot-changed':
      return {
        ...lot,
        facts: changedFacts(lot.facts, happening),
        evidence: evidenceAfter(lot.evidence, happening),
        changedAt: entry.at,
      };
    case 'bid-noted':
    case 'result-noted': {
      const sale = saleAfter(lot.sale, entry);
      return { ...lot, ...(sale && { sale }), changedAt: entry.at };
    }
    case 'risk-accepted':
      return { ...lot, changedAt: entry.at };
    case 'attachment-kept': {
      const attachments = attachmentsAfter(lot.attachments, entry);
      return { ...lot, ...(attachments && { attachments }), changedAt: entry.at };
    }
    case 'step-noted':
    case 'dispute-opened':
    case 'dispute-changed':
    case 'dispute-stepped':
    case 'dispute-closed': {
      const after = afterSaleAfter(lot.after, entry);
      return { ...lot, ...(after && { after }), changedAt: entry.at };
    }
    default:
      return afterClock(lot, entry);
  }
}

/** A fact that was set or emptied is settled, whatever could not be read of it before. */
function changedFacts(
  before: LotFacts,
  { set, clear }: { readonly set: LotFacts; readonly clear: readonly LotField[] },
): LotFacts {
  const facts = { ...without(before, clear), ...set };
  if (facts.unread === undefined || set.unread !== undefined) return facts;
  const unread = stillUnread(facts.unread, new Set([...clear, ...Object.keys(set)]));
  return { ...without(facts, ['unread']), ...(unread && { unread }) };
}

function without(facts: LotFacts, fields: readonly LotField[]): LotFacts {
  const left = { ...facts };
  for (const field of fields) delete left[field];
  return left;
}

/** A new value without evidence of its own must not keep the evidence of the value before it. */
function evidenceAfter(
  before: LotState['evidence'],
  change: { readonly set: LotFacts; readonly clear: readonly LotField[]; readonly evidence: LotState['evidence'] },
): LotState['evidence'] {
  const touched = new Set<string>([...change.clear, ...Object.keys(change.set)]);
  const kept: [string, Evidence][] = Object.entries(before).filter(([field]) => !touched.has(field));
  return { ...Object.fromEntries(kept), ...change.evidence };
}
