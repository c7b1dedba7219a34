import type { Entry } from '../journal/entry.ts';
import { rowOf } from '../journal/happening.ts';
import type { SetupState } from '../journal/states/setup-state.ts';
import { countingInOrder } from './undo.ts';

/** As foldLots: any order, any number of devices; for each section the entry with the greatest id wins. */
export function foldSetup(entries: Iterable<Entry>): SetupState {
  return countingInOrder(entries).reduce(setupAfter, null as SetupState);
}

/** The setup after an entry that counts, and sorts after all that were applied before. */
export function setupAfter(setup: SetupState, { happening }: Entry): SetupState {
  const row = rowOf(happening);
  return row.about === 'setup' ? row.fold(setup, happening) : setup;
}
