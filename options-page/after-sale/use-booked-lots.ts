import { useMemo } from 'preact/hooks';
import { bookedLots } from '../../src/journal/booked-lot.ts';
import type { Store } from '../../src/store/store.ts';
import type { StoreChange } from '../../src/store/touched.ts';
import { useFromStore } from '../../src/ui/use-from-store.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

export type BookedLotOf = ReturnType<typeof bookedLots>;

const read = (store: Store) => store.books();
const concerns = ({ books, lots }: StoreChange) => books || lots === 'many';

/** What the books say of each lot, kept in step with the store; null until they are read. */
export function useBookedLots(): BookedLotOf | null {
  const { zone } = useWorkspace().setup.store;
  const books = useFromStore(read, concerns);
  return useMemo(() => books && bookedLots(books, zone), [books, zone]);
}
