import { useEffect, useState } from 'preact/hooks';
import type { Store } from '../../store/store.ts';
import type { StoreChange } from '../../store/write/touched.ts';
import { useWorkspace } from '../workspace.ts';

/**
 * What `read` finds in the store, kept in step with it; null until it was read. What goes wrong is said.
 * @param read must be the same function from one drawing to the next, or it is read again each time
 * @param concerns whether a change of the store may change the answer
 */
export function useFromStore<Found>(
  read: (store: Store) => Promise<Found>,
  concerns: (change: StoreChange) => boolean,
): Found | null {
  const { store, say } = useWorkspace();
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    let current = true;
    const look = () =>
      read(store).then(
        (answer) => current && setFound(() => answer),
        (error: unknown) => current && say(String(error)),
      );
    void look();
    const stop = store.subscribe((change) => {
      if (concerns(change)) void look();
    });
    return () => {
      current = false;
      stop();
    };
  }, [store, say, read, concerns]);
  return found;
}
