import { useMemo } from 'preact/hooks';
import type { LotFacts, LotField } from '../../src/domain/lot/lot.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

export interface LotEdit {
  /** Keeps one field's new value, or empties it; the change can be undone from the foot of the page. */
  readonly commit: <Field extends LotField>(field: Field, value: LotFacts[Field] | undefined, said: string) => void;
  /** Keeps several fields as one change. */
  readonly commitAll: (set: LotFacts, clear: readonly LotField[], said: string) => void;
}

/** Typed changes to one lot, each a journal entry with "typed" as its evidence. */
export function useLotEdit(lot: LotState): LotEdit {
  const { changeLot, say } = useWorkspace();
  return useMemo(() => {
    const commitAll: LotEdit['commitAll'] = async (set, clear, said) => {
      const evidence = Object.fromEntries(
        Object.keys(set).map((field) => [field, { from: 'typed', text: '', sure: 'certain' } as const]),
      );
      const kept = await changeLot(lot.id, set, clear, evidence);
      if (kept.ok) say(said, kept.value.entry);
      else say(kept.message);
    };
    return {
      commitAll,
      commit: (field, value, said) => {
        if (value === undefined) commitAll({}, [field], said);
        else commitAll({ [field]: value }, [], said);
      },
    };
  }, [lot.id, changeLot, say]);
}
