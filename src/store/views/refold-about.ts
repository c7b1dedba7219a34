import type { LotId } from '../../domain/lot/lot.ts';
import { alertsIn } from '../../folds/fold-alerts.ts';
import { lotsBornIn } from '../../folds/fold-lots.ts';
import { asUndo } from '../../folds/undo.ts';
import type { Entry } from '../../journal/entry.ts';
import { rowOf } from '../../journal/happening.ts';
import type { DeviceId, EntryId } from '../../journal/ids.ts';
import type { LotState } from '../../journal/states/lot-state.ts';
import { lotOfSubject } from '../../journal/subject.ts';
import type { WriteTransaction } from '../connection/schema.ts';
import { readHead } from '../write/head.ts';
import type { Touched } from '../write/touched.ts';
import { birthOf, refoldAlerts, refoldLot, refoldSetup, whatWasUndone } from './refold.ts';

/** What entries reach. */
class Reached {
  readonly births = new Map<EntryId, Entry>();
  readonly lots = new Set<LotId>();
  setup = false;
  alerts = false;
  books = false;

  add(entry: Entry, device: DeviceId): void {
    const { about } = rowOf(entry.happening);
    const lot = lotOfSubject(entry.subject);
    if (about === 'arrival') this.births.set(entry.id, entry);
    else if (about === 'lot' && lot !== null) this.lots.add(lot);
    else if (about === 'setup') this.setup = true;
    if (about === 'alerts') {
      // What another device showed its user mostly says nothing of what this one has to show.
      const { shown, voided } = alertsIn(entry, device);
      this.alerts ||= shown.length + voided.length > 0;
    }
    if (about === 'books') this.books = true;
  }
}

/**
 * After entries came in that may sort anywhere among those that are here: makes the views of what they reach again, and no
 * others. The entries are in the journal already.
 * @param undone every entry that does not count
 */
export async function refoldAbout(
  tx: WriteTransaction,
  entries: readonly Entry[],
  touched: Touched,
  undone: ReadonlySet<EntryId>,
): Promise<void> {
  const { device } = await readHead(tx);
  const reached = new Reached();
  for (const entry of entries) {
    const undo = asUndo(entry);
    // An undo may arrive before what it undoes: then that one finds it here.
    const base = undo === null ? entry : await whatWasUndone(tx, undo.target);
    if (base !== null) reached.add(base, device);
  }
  for (const birth of reached.births.values()) {
    const isUndone = undone.has(birth.id);
    for (const born of lotsBornIn(birth)) {
      touched.lots.add(born.id);
      reached.lots.delete(born.id);
      await (isUndone ? removeLot(tx, born) : refoldLot(tx, born, undone));
    }
  }
  for (const id of reached.lots) {
    const born = await birthOf(tx, id);
    if (born === null) continue;
    touched.lots.add(id);
    await refoldLot(tx, born, undone);
  }
  if (reached.setup) await refoldSetup(tx, undone);
  if (reached.alerts) await refoldAlerts(tx, undone);
  touched.setup ||= reached.setup;
  touched.alerts ||= reached.alerts;
  touched.books ||= reached.books;
}

async function removeLot(tx: WriteTransaction, { id }: LotState): Promise<void> {
  await tx.objectStore('lots').delete(id);
}
