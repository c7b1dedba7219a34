import { useMemo } from 'preact/hooks';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Happening } from '../../journal/happening.ts';
import type { EntryId } from '../../journal/ids.ts';
import { subjectOfLot } from '../../journal/subject.ts';
import { sayHappening } from '../../views/history/say-happening.ts';
import { useWorkspace } from '../workspace.ts';

export interface AfterVerbs {
  /** Writes what happened after the sale of a lot, and says so with an undo. Null when it could not be kept. */
  readonly note: (lot: LotState, happening: Happening, sentence?: string) => Promise<EntryId | null>;
  /** Takes an entry back, and says so. */
  readonly takeBack: (entry: EntryId) => Promise<void>;
}

export function useAfterVerbs(): AfterVerbs {
  const { store, say, undo } = useWorkspace();
  return useMemo(
    () => ({
      note: async (lot, happening, sentence) => {
        const written = await store.append([{ subject: subjectOfLot(lot.id), happening }]);
        if (!written.ok) {
          say(written.message);
          return null;
        }
        const entry = written.value[0]?.id ?? null;
        say(sentence ?? `${lotTitle(lot.facts)}: ${sayHappening(happening)}.`, entry ?? undefined);
        return entry;
      },
      takeBack: async (entry) => {
        const kept = await undo(entry);
        say(kept.ok ? 'Undone.' : kept.message, kept.ok ? kept.value.entry : undefined);
      },
    }),
    [store, say, undo],
  );
}
