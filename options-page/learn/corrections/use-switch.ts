import { useCallback } from 'preact/hooks';
import type { Switches } from '../../../src/domain/correction/switches.ts';
import { SETUP } from '../../../src/journal/subject.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';

/** Switches corrections in one entry, and says it with an undo. */
export function useSwitch(): (set: Switches, said: string) => Promise<void> {
  const { store, say } = useWorkspace();
  return useCallback(
    async (set, said) => {
      const kept = await store.append([{ subject: SETUP, happening: { kind: 'corrections-switched', set } }]);
      if (kept.ok) say(said, kept.value.at(-1)?.id);
      else say(kept.message);
    },
    [store, say],
  );
}
