import type { LotId } from '../../domain/lot/lot.ts';
import { applyToAlerts, type ShownAlert } from '../../folds/fold-alerts.ts';
import { applyToLots } from '../../folds/fold-lots.ts';
import { setupAfter } from '../../folds/fold-setup.ts';
import { FOLD_VERSION } from '../../folds/fold-version.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { type Envelope, readEntry } from '../../journal/read-entry.ts';
import type { SetupState } from '../../journal/states/setup-state.ts';
import type { Views, WriteTransaction } from '../connection/schema.ts';
import { eachEntry } from '../journal/each-entry.ts';
import type { Slices } from '../journal/slices.ts';
import { readHead } from '../write/head.ts';
import { addInSlices, replaceAll } from '../write/write-all.ts';
import { forgetFirstFolders } from './first-folders.ts';
import { forgetFirstRows } from './first-rows.ts';
import { forgetPlan } from './kept-plan.ts';
import { everyUndone } from './refold.ts';

/**
 * Makes every view again from the journal alone, for this browser, inside the caller's transaction.
 * @param slices where a page waits for it
 * @throws Refused when the slices were stopped
 */
export async function foldIntoViews(tx: WriteTransaction, slices?: Slices): Promise<Views> {
  const { device } = await readHead(tx);
  const undone = await everyUndone(tx);
  const lots = new Map<LotId, LotState>();
  const alerts = new Map<string, ShownAlert>();
  let setup: SetupState = null;
  let unknown = 0;
  let unreadable = 0;
  const fold = (raw: Envelope): void => {
    const read = readEntry(raw);
    if (read.as === 'unknown') unknown += 1;
    if (read.as === 'unreadable') unreadable += 1;
    if (read.as !== 'known' || undone.has(read.entry.id)) return;
    if (!applyToLots(lots, read.entry)) unreadable += 1;
    setup = setupAfter(setup, read.entry);
    applyToAlerts(alerts, read.entry, device);
  };
  await eachEntry(tx, fold, slices);
  forgetFirstRows(tx);
  forgetFirstFolders(tx);
  forgetPlan(tx);
  await replaceLots(tx, lots, slices);
  replaceAll(tx.objectStore('alerts'), alerts.values());
  await tx.objectStore('setup').clear();
  if (setup !== null) await tx.objectStore('setup').put(setup, 'sections');
  const views = { foldVersion: FOLD_VERSION, unknown, unreadable };
  await tx.objectStore('meta').put(views, 'views');
  return views;
}

async function replaceLots(
  tx: WriteTransaction,
  lots: ReadonlyMap<LotId, LotState>,
  slices: Slices | undefined,
): Promise<void> {
  const store = tx.objectStore('lots');
  if (slices === undefined) return replaceAll(store, lots.values());
  await store.clear();
  await addInSlices(store, lots.values(), slices);
}
