import { act } from 'preact/test-utils';
import type { Setup } from '../../src/domain/setup/setup.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import type { Store } from '../../src/store/store.ts';
import type { Workspace } from '../../src/ui/workspace.ts';
import { NO_PLAN } from '../../src/views/lots/planned-bids.ts';
import { value } from '../store/open-test-store.ts';

export interface Said {
  readonly sentence: string;
  readonly entry: EntryId | undefined;
}

/** What a screen sees of a store, and what it says. Only for screens that ask for no more than this. */
export function storeWorkspace(store: Store, lots: readonly LotState[], setup: Setup, said: Said[]): Workspace {
  return {
    lots,
    complete: true,
    setup,
    setupKept: true,
    plan: null,
    planned: NO_PLAN,
    store,
    undo: async (entry) => {
      value(await store.undo(entry));
      return { ok: true, value: { entry } };
    },
    say: (sentence, entry) => said.push({ sentence, entry }),
    ...({} as Omit<
      Workspace,
      'lots' | 'complete' | 'setup' | 'setupKept' | 'plan' | 'planned' | 'store' | 'undo' | 'say'
    >),
  };
}

export const pageText = (): string => document.body.textContent ?? '';

/** A screen that is loaded when it is first opened takes its time on a busy machine. */
const PATIENCE = 3000;

/** Waits until the page is as it should be: the store answers in its own time. */
export async function sees(is: () => boolean): Promise<void> {
  for (let i = 0; i < PATIENCE && !is(); i++) await act(() => new Promise((resolve) => setTimeout(resolve, 10)));
  if (!is()) throw new Error(`not seen: ${is}\n${pageText().slice(0, 2000)}`);
}
