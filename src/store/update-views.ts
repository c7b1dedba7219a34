import type { LotId } from '../domain/lot/lot.ts';
import type { Entry } from '../journal/entry.ts';
import { alertsShownIn } from '../journal/fold-alerts.ts';
import { changedLot, lotsBornIn } from '../journal/fold-lots.ts';
import { setupAfter } from '../journal/fold-setup.ts';
import { lotOfSubject } from '../journal/subject.ts';
import { refoldAfterUndo } from './refold.ts';
import { Refused } from './refused.ts';
import type { WriteTransaction } from './schema.ts';
import type { Touched } from './touched.ts';
import { addAll } from './write-all.ts';

/**
 * Brings the views up to date with an entry that was just written, and so sorts after every other.
 * @throws Refused when it is about a lot that is not here.
 */
export async function updateViews(tx: WriteTransaction, entry: Entry, touched: Touched): Promise<void> {
  const { happening } = entry;
  switch (happening.kind) {
    case 'lots-added': {
      addAll(tx.objectStore('lots'), lotsBornIn(entry));
      for (const { id } of happening.lots) touched.lots.add(id);
      return;
    }
    case 'lot-changed':
    case 'lot-dropped':
      return changeLot(tx, entry, touched);
    case 'setup-changed': {
      const setup = tx.objectStore('setup');
      const after = setupAfter((await setup.get('sections')) ?? null, entry);
      if (after !== null) await setup.put(after, 'sections');
      touched.setup = true;
      return;
    }
    case 'alerts-shown': {
      const alerts = tx.objectStore('alerts');
      for (const alert of alertsShownIn(entry))
        if ((await alerts.getKey(alert.key)) === undefined) await alerts.put(alert);
      touched.alerts = true;
      return;
    }
    case 'undone':
      return refoldAfterUndo(tx, happening.entry, touched);
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
      'This lot is not here any more: its arrival was undone, perhaps in another tab. Nothing was written.',
    );
  await lots.put(changedLot(before, entry));
  touched.lots.add(id);
}
