import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { Change } from '../../../src/journal/make-entry.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { countWords } from '../../../src/views/words/count-words.ts';

interface ManyLots {
  /** Sets facts of each lot, typed; `said` follows after "3 lots: ". Resolves to whether it was kept. */
  readonly set: (lots: readonly LotState[], facts: (lot: LotState) => LotFacts, said: string) => Promise<boolean>;
  /** The same with the facts worked out already; lots that stay as they are are left out of it. */
  readonly setEach: (
    sets: readonly { readonly lot: LotState; readonly facts: LotFacts }[],
    said: string,
  ) => Promise<boolean>;
  readonly drop: (lots: readonly LotState[]) => Promise<boolean>;
}

/** Changes many lots, all or none, with one undo for all of them. */
export function useManyLots(): ManyLots {
  const { store, say } = useWorkspace();
  const write = async (changes: readonly Change[], said: string) => {
    const written = await store.append(changes);
    if (written.ok) say(said, ...written.value.map(({ id }) => id));
    else say(written.message);
    return written.ok;
  };
  const many = (lots: readonly unknown[]) => countWords(lots.length, 'lot', 'lots');
  const setEach: ManyLots['setEach'] = (sets, said) =>
    write(
      sets.map(({ lot, facts: set }): Change => {
        const evidence = Object.fromEntries(
          Object.keys(set).map((field) => [field, { from: 'typed', text: '', sure: 'certain' } as const]),
        );
        return { subject: subjectOfLot(lot.id), happening: { kind: 'lot-changed', set, clear: [], evidence } };
      }),
      `${many(sets)}: ${said}`,
    );
  return {
    setEach,
    set: (lots, facts, said) =>
      setEach(
        lots.map((lot) => ({ lot, facts: facts(lot) })),
        said,
      ),
    drop(lots) {
      const changes = lots.map(({ id }): Change => ({ subject: subjectOfLot(id), happening: { kind: 'lot-dropped' } }));
      return write(changes, `${many(lots)} removed from your list.`);
    },
  };
}
