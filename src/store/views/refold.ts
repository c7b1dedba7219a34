import type { LotId } from '../../domain/lot/lot.ts';
import { foldAlertsShown } from '../../folds/fold-alerts.ts';
import { foldLot, lotsBornIn } from '../../folds/fold-lots.ts';
import { foldSetup } from '../../folds/fold-setup.ts';
import { asUndo, undoneIds } from '../../folds/undo.ts';
import type { Entry } from '../../journal/entry.ts';
import { rowOf } from '../../journal/happening.ts';
import type { EntryId } from '../../journal/ids.ts';
import { type Envelope, readEntry } from '../../journal/read-entry.ts';
import type { LotState } from '../../journal/states/lot-state.ts';
import { ALERTS, lotOfSubject, SETUP, subjectOfLot } from '../../journal/subject.ts';
import type { ReadTransaction, WriteTransaction } from '../connection/schema.ts';
import { readHead } from '../write/head.ts';
import type { Touched } from '../write/touched.ts';
import { replaceAll } from '../write/write-all.ts';

/** After an undo was written: makes the views of what it reached again from the entries about it. */
export async function refoldAfterUndo(tx: WriteTransaction, target: EntryId, touched: Touched): Promise<void> {
  const base = await whatWasUndone(tx, target);
  if (base === null) return;
  const undone = await everyUndone(tx);
  const { about } = rowOf(base.happening);
  switch (about) {
    case 'lot': {
      const id = lotOfSubject(base.subject);
      const born = id === null ? null : await birthOf(tx, id);
      if (born === null) return;
      touched.lots.add(born.id);
      touched.folders = true;
      return refoldLot(tx, born, undone);
    }
    case 'arrival': {
      const brought = lotsBornIn(base);
      for (const { id } of brought) touched.lots.add(id);
      touched.folders = true;
      await Promise.all(
        brought.map((born) =>
          undone.has(base.id) ? tx.objectStore('lots').delete(born.id) : refoldLot(tx, born, undone),
        ),
      );
      return;
    }
    case 'setup':
      touched.setup = true;
      return refoldSetup(tx, undone);
    case 'alerts':
      touched.alerts = true;
      return refoldAlerts(tx, undone);
    case 'books':
      touched.books = true;
      return;
    case 'undo':
      // What stands at the end of a row of undos is something else.
      return;
    default:
      about satisfies never;
  }
}

export async function refoldSetup(tx: WriteTransaction, undone: ReadonlySet<EntryId>): Promise<void> {
  const setup = foldSetup(await countingAbout(tx, SETUP, undone));
  const store = tx.objectStore('setup');
  await (setup === null ? store.delete('sections') : store.put(setup, 'sections'));
}

export async function refoldAlerts(tx: WriteTransaction, undone: ReadonlySet<EntryId>): Promise<void> {
  const { device } = await readHead(tx);
  const shown = foldAlertsShown(await countingAbout(tx, ALERTS, undone), device);
  replaceAll(tx.objectStore('alerts'), shown.values());
}

/** Every entry id that does not count. Undos are few, so all of them are looked at. */
export async function everyUndone(tx: ReadTransaction): Promise<Set<EntryId>> {
  const undos = known(await tx.objectStore('entries').index('undoes').getAll());
  return undoneIds(undos.flatMap((entry) => asUndo(entry) ?? []));
}

/** The entries that this version understands. */
export function known(raws: readonly Envelope[]): Entry[] {
  return raws.flatMap((raw) => {
    const read = readEntry(raw);
    return read.as === 'known' ? read.entry : [];
  });
}

/** The entry at the end of a row of undos of undos; null when this version does not understand it. */
export async function whatWasUndone(tx: ReadTransaction, target: EntryId): Promise<Entry | null> {
  const raw = await tx.objectStore('entries').get(target);
  const [entry] = raw === undefined ? [] : known([raw]);
  if (entry === undefined) return null;
  const undo = asUndo(entry);
  if (undo === null) return entry;
  return undo.target < undo.id ? whatWasUndone(tx, undo.target) : null;
}

export async function refoldLot(tx: WriteTransaction, born: LotState, undone: ReadonlySet<EntryId>): Promise<void> {
  const about = await countingAbout(tx, subjectOfLot(born.id), undone);
  await tx.objectStore('lots').put(foldLot(born, about));
}

/** A lot as it came in, or null when it is not here. */
export async function birthOf(tx: ReadTransaction, id: LotId): Promise<LotState | null> {
  const lot = await tx.objectStore('lots').get(id);
  const raw = lot && (await tx.objectStore('entries').get(lot.bornIn));
  const [birth] = raw === undefined ? [] : known([raw]);
  return (birth && lotsBornIn(birth).find((born) => born.id === id)) ?? null;
}

/** In the order of their ids, which is the order an index gives entries with the same subject in. */
async function countingAbout(tx: ReadTransaction, subject: string, undone: ReadonlySet<EntryId>): Promise<Entry[]> {
  const raws = await tx.objectStore('entries').index('subject').getAll(subject);
  return known(raws).filter((entry) => !undone.has(entry.id));
}
