import { type ToDo, toDosOf } from '../../domain/after-sale/to-do.ts';
import { type VenuePlace, venuePlaces } from '../../domain/after-sale/venue-place.ts';
import { type WinMoney, winMoney } from '../../domain/after-sale/win-money.ts';
import { type WinStanding, winStanding } from '../../domain/after-sale/win-standing.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { BookedLotOf } from '../sold/booked-lot.ts';
import { type KnownLot, soldLotOf } from '../sold/sold-lot.ts';

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
