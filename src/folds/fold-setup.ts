import type { Setup } from '../domain/setup/setup.ts';
import type { Entry } from '../journal/entry.ts';
import { countingInOrder } from './undo.ts';

/** The sections that were ever set, each as its last entry left it; null when none ever was. */
export type SetupState = Partial<Setup> | null;

/** As foldLots: any order, any number of devices; for each section the entry with the greatest id wins. */
export function foldSetup(entries: Iterable<Entry>): SetupState {
  let setup: SetupState = null;
  for (const entry of countingInOrder(entries)) setup = setupAfter(setup, entry);
  return setup;
}

/** The setup after an entry that counts, and sorts after all that were applied before. */
export function setupAfter(setup: SetupState, { happening }: Entry): SetupState {
  return happening.kind === 'setup-changed' ? { ...setup, ...happening.set } : setup;
}
