import { useMemo } from 'preact/hooks';
import type { Store } from '../../store/store.ts';
import type { StoreChange } from '../../store/write/touched.ts';
import { type BookedLotOf, bookedLots } from '../../views/sold/booked-lot.ts';
import { useWorkspace } from '../workspace.ts';
import { useFromStore } from './use-from-store.ts';

const read = (store: Store) => store.books();
const concerns = ({ books, lots }: StoreChange) => books || lots === 'many';

/** What the books say of each lot, kept in step with the store; null until they are read. */
export function useBookedLots(): BookedLotOf | null {
  const { zone } = useWorkspace().setup.store;
  const books = useFromStore(read, concerns);
  return useMemo(() => books && bookedLots(books, zone), [books, zone]);
}
