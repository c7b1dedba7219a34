import { useEffect, useState } from 'preact/hooks';
import { lotIdSchema } from '../../domain/lot/lot.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { useWorkspace } from '../workspace.ts';

/** One lot, dropped or not, kept in step with the store: undefined until it is read, null when there is none. */
export function useOneLot(text: string): LotState | null | undefined {
  const { store, say } = useWorkspace();
  const [lot, setLot] = useState<LotState | null>();
  useEffect(() => {
    const id = lotIdSchema.safeParse(text);
    setLot(id.success ? undefined : null);
    if (!id.success) return;
    let current = true;
    const read = () =>
      store.lot(id.data).then(
        (found) => current && setLot(found),
        (error: unknown) => current && say(String(error)),
      );
    read();
    const stop = store.subscribe((change) => {
      if (change.lots === 'many' || change.lots.includes(id.data)) read();
    });
    return () => {
      current = false;
      stop();
    };
  }, [store, say, text]);
  return lot;
}
