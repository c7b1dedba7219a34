import { useMemo } from 'preact/hooks';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Store } from '../../store/store.ts';
import type { StoreChange } from '../../store/write/touched.ts';
import { type AfterLot, afterLotsUnder } from '../../views/after-sale/after-lot.ts';
import { type EachLot, eachLot } from '../../views/lots-apart.ts';
import { useWorkspace } from '../workspace.ts';
import { useBookedLots } from './use-booked-lots.ts';
import { useFromStore } from './use-from-store.ts';

const read = (store: Store) => store.lotsAfterSale();
const concerns = ({ lots }: StoreChange) => lots === 'many' || lots.length > 0;

/** The lots that were won or disputed, dropped ones too, kept in step with the store; null until they are read. */
export const useLotsAfterSale = (): readonly LotState[] | null => useFromStore(read, concerns);

/** The same, each worked out under the setup of now. A new `now` works all of them out anew. */
export function useAfterLots(now: Instant): EachLot<AfterLot> | null {
  const { setup } = useWorkspace();
  const lots = useLotsAfterSale();
  const bookedOf = useBookedLots();
  return useMemo(
    () => (bookedOf && lots && eachLot(lots, afterLotsUnder(setup, bookedOf, now))) ?? null,
    [lots, setup, bookedOf, now],
  );
}
