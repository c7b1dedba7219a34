import { useEffect, useState } from 'preact/hooks';
import type { LotState } from '../../src/folds/lot-state.ts';

/** Lots that are to be printed instead of those that are shown, while they are; and what prints them. */
export function usePaper(): {
  readonly lots: readonly LotState[] | undefined;
  readonly printThese: (lots: readonly LotState[]) => void;
} {
  const [lots, setLots] = useState<readonly LotState[]>();
  useEffect(() => {
    if (lots === undefined) return;
    const end = () => setLots(undefined);
    addEventListener('afterprint', end);
    print();
    return () => removeEventListener('afterprint', end);
  }, [lots]);
  return { lots, printThese: setLots };
}
