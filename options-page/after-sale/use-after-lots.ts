import { useMemo } from 'preact/hooks';
import { type ToDo, toDosOf } from '../../src/domain/after-sale/to-do.ts';
import { type VenuePlace, venuePlaces } from '../../src/domain/after-sale/venue-place.ts';
import { type WinMoney, winMoney } from '../../src/domain/after-sale/win-money.ts';
import { type WinStanding, winStanding } from '../../src/domain/after-sale/win-standing.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/journal/lot-state.ts';
import { type KnownLot, soldLotOf } from '../../src/journal/sold-lot.ts';
import type { Store } from '../../src/store/store.ts';
import type { StoreChange } from '../../src/store/touched.ts';
import { useFromStore } from '../../src/ui/use-from-store.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { type BookedLotOf, useBookedLots } from './use-booked-lots.ts';

/** A lot with all that its venue's rules make of it. */
export interface AfterLot {
  readonly lot: LotState;
  readonly sold: KnownLot;
  readonly place: VenuePlace;
  readonly toDos: readonly ToDo[];
  /** Of a win, standing or not. */
  readonly money?: WinMoney | undefined;
  readonly standing?: WinStanding | undefined;
}

const read = (store: Store) => store.lotsAfterSale();
const concerns = ({ lots }: StoreChange) => lots === 'many' || lots.length > 0;

/** The lots that were won or disputed, dropped ones too, kept in step with the store; null until they are read. */
export const useLotsAfterSale = (): readonly LotState[] | null => useFromStore(read, concerns);

/** The same, worked out under the setup of now. A new `now` works all of them out anew. */
export function useAfterLots(now: Instant): readonly AfterLot[] | null {
  const { setup } = useWorkspace();
  const lots = useLotsAfterSale();
  const bookedOf = useBookedLots();
  return useMemo(
    () => (bookedOf && lots?.map(afterLotsUnder(setup, bookedOf, now))) ?? null,
    [lots, setup, bookedOf, now],
  );
}

/** How one lot stands under a setup. */
export function afterLotsUnder(setup: Setup, bookedOf: BookedLotOf, now: Instant): (lot: LotState) => AfterLot {
  const placeOf = venuePlaces(setup);
  return (lot) => {
    const sold = soldLotOf(lot, bookedOf(lot.id, lot.facts));
    const place = placeOf(lot.facts);
    return {
      lot,
      sold,
      place,
      toDos: toDosOf(sold, setup, place),
      money: winMoney(sold, setup, place),
      standing: winStanding(sold, place, now),
    };
  };
}
