import type { LotId } from '../../domain/lot/lot.ts';
import { alertsIn } from '../../folds/fold-alerts.ts';
import { changedLot, lotsBornIn } from '../../folds/fold-lots.ts';
import { setupAfter } from '../../folds/fold-setup.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { asUndo } from '../../folds/undo.ts';
import type { Entry } from '../../journal/entry.ts';
import { rowOf } from '../../journal/happening.ts';
import { lotOfSubject } from '../../journal/subject.ts';
import type { WriteTransaction } from '../connection/schema.ts';
import { Refused } from '../write/refused.ts';
import type { Touched } from '../write/touched.ts';
import { addAll } from '../write/write-all.ts';
import { refoldAfterUndo } from './refold.ts';

/**
 * Brings the views up to date with an entry that this browser has just written, and so sorts after every other.
 * @throws Refused when it is about a lot that is not here.
 */
export async function updateViews(tx: WriteTransaction, entry: Entry, touched: Touched): Promise<void> {
  const { about } = rowOf(entry.happening);
  switch (about) {
    case 'lot':
      return changeLot(tx, entry, touched);
    case 'arrival': {
      const born = lotsBornIn(entry);
      addAll(tx.objectStore('lots'), born);
      for (const { id } of born) touched.lots.add(id);
      return;
    }
    case 'setup': {
      const setup = tx.objectStore('setup');
      const after = setupAfter((await setup.get('sections')) ?? null, entry);
      if (after !== null) await setup.put(after, 'sections');
      touched.setup = true;
      return;
    }
    case 'alerts': {
      const alerts = tx.objectStore('alerts');
      const { shown, voided } = alertsIn(entry, entry.device);
      const kept = await Promise.all(shown.map(({ key }) => alerts.getKey(key)));
      await Promise.all(shown.filter((_, i) => kept[i] === undefined).map((alert) => alerts.put(alert)));
      for (const key of voided) await alerts.delete(key);
      touched.alerts = true;
      return;
    }
    case 'books':
      // The books have no view: they are folded when they are read.
      touched.books = true;
      return;
    case 'undo': {
      const undo = asUndo(entry);
      return undo === null ? undefined : refoldAfterUndo(tx, undo.target, touched);
    }
    default:
      about satisfies never;
  }
}

async function changeLot(tx: WriteTransaction, entry: Entry, touched: Touched): Promise<void> {
  const lots = tx.objectStore('lots');
  const id: LotId | null = lotOfSubject(entry.subject);
  if (id === null) throw new Error(`${entry.happening.kind} is about a lot, not about ${entry.subject}`);
  const before = await lots.get(id);
  if (before === undefined)
    throw new Refused(
      'no-such-lot',
      'This lot is no longer here: adding it was undone, perhaps in another tab. Nothing was saved.',
    );
  const after = changedLot(before, entry);
  await lots.put(after);
  touched.lots.add(id);
  touched.folders ||= mayHaveFolder(before) || mayHaveFolder(after);
}

const mayHaveFolder = ({ sale, after }: LotState): boolean =>
  sale?.result?.result.ended === 'won' || after !== undefined;
