import { useCallback } from 'preact/hooks';
import type { PurseEntry } from '../../src/domain/setup/purse-entry.ts';
import type { Store } from '../../src/store/store.ts';
import type { StoreChange } from '../../src/store/write/touched.ts';
import { useFromStore } from '../../src/ui/hooks/use-from-store.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

/** The purse as it was counted: `none` without one. */
export type KnownPurse = PurseEntry | 'none';

const read = async (store: Store): Promise<KnownPurse> => (await store.purse()) ?? 'none';
const concerns = ({ setup }: StoreChange) => setup;

/** The purse, kept in step with the store; null until it is read. */
export const usePurse = (): KnownPurse | null => useFromStore(read, concerns);

/** Keeps a purse and says so, with its undo. */
export function useSetPurse(): (purse: PurseEntry | null, said: string) => Promise<void> {
  const { store, say } = useWorkspace();
  return useCallback(
    async (purse, said) => {
      const kept = await store.setPurse(purse);
      if (kept.ok) say(said, ...kept.value.map(({ id }) => id));
      else say(kept.message);
    },
    [store, say],
  );
}
