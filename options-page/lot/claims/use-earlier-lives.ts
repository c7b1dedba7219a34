import { useEffect, useState } from 'preact/hooks';
import type { Sighting } from '../../../src/domain/claims/contradictions.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { sightingOf } from '../../../src/views/lots/listing-doubts.ts';

const NONE: readonly Sighting[] = [];

/** What other lots in the store, dropped ones too, say about the car with the same VIN. */
export function useEarlierLives(lot: LotState): readonly Sighting[] {
  const { store, setup, lots, say } = useWorkspace();
  const [earlier, setEarlier] = useState<readonly Sighting[]>(NONE);
  const { vin } = lot.facts;
  const { zone } = setup.store;
  // With `lots`, because another lot of the same car may have come in.
  useEffect(() => {
    if (vin === undefined) return setEarlier(NONE);
    let current = true;
    store.lotsByVin(vin).then(
      (found) => {
        const others = found.filter(({ id }) => id !== lot.id);
        if (current) setEarlier(others.length === 0 ? NONE : others.map((other) => sightingOf(other, zone)));
      },
      (error: unknown) => say(String(error)),
    );
    return () => {
      current = false;
    };
  }, [store, vin, lot.id, zone, lots, say]);
  return earlier;
}
