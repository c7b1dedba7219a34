import { useEffect, useMemo, useState } from 'preact/hooks';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { eachLot, type LotApart } from '../../src/views/lots-apart.ts';
import { type ResultRow, rowsUnder } from '../../src/views/results/result-row.ts';

/** Every lot with a result, those no longer watched too: what happened stays, whoever still looks at the lot. */
export function useResultRows(): { readonly rows: readonly ResultRow[]; readonly apart: readonly LotApart[] } {
  const { lots, setup, store, say } = useWorkspace();
  const dropped = useDroppedWithResult(lots.length, store, say);
  const rowOf = useMemo(() => rowsUnder(setup), [setup]);
  return useMemo(() => {
    const { done, apart } = eachLot([...lots, ...dropped], rowOf);
    return { rows: done.filter((row) => row !== null), apart };
  }, [lots, dropped, rowOf]);
}

function useDroppedWithResult(
  watched: number,
  store: ReturnType<typeof useWorkspace>['store'],
  say: (sentence: string) => void,
): readonly LotState[] {
  const [dropped, setDropped] = useState<readonly LotState[]>([]);
  // Read again when the number of watched lots changes: that is when one was dropped or came back.
  useEffect(() => {
    let current = true;
    store.allLots().then(
      (all) => current && setDropped(all.filter((lot) => lot.dropped && lot.sale?.result !== undefined)),
      (error: unknown) => say(String(error)),
    );
    return () => {
      current = false;
    };
  }, [watched, store, say]);
  return dropped;
}
