import { type DisputeDue, disputeDues, soonestDue } from '../../domain/after-sale/dispute-due.ts';
import type { Due } from '../../domain/after-sale/due.ts';
import { type VenuePlace, venuePlaces } from '../../domain/after-sale/venue-place.ts';
import { eventsOf } from '../../domain/after-sale/win.ts';
import { stillNeeded } from '../../domain/dispute/dispute.ts';
import { REASON_WORDS } from '../../domain/dispute/reason-words.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { DisputeState } from '../../journal/states/after-sale-state.ts';
import type { BookedLotOf } from '../sold/booked-lot.ts';
import { soldLotOf } from '../sold/sold-lot.ts';

/** A dispute with its lot, and what its venue's rules make of it. */
export interface ShownDispute {
  readonly lot: LotState;
  readonly dispute: DisputeState;
  readonly place: VenuePlace;
  readonly dues: readonly DisputeDue[];
  /** The soonest date by which something is to be done. */
  readonly soonest: Instant | undefined;
  /** What stands in the list's first column: the soonest date, or why there is none. */
  readonly due: Due;
  readonly missing: readonly string[];
}

/** Every dispute of a lot as it is shown. */
export function disputesUnder(
  setup: Pick<Setup, 'venues' | 'store'>,
  bookedOf: BookedLotOf,
): (lot: LotState) => ShownDispute[] {
  const placeOf = venuePlaces(setup);
  return (lot) => {
    const place = placeOf(lot.facts);
    const events = eventsOf(soldLotOf(lot, bookedOf(lot.id, lot.facts)));
    return (lot.after?.disputes ?? []).map((dispute) => {
      const dues = disputeDues(dispute, events, place);
      const soonest = soonestDue(dues);
      const due = dues.find((each) => each.due.as === 'at' && each.due.at === soonest) ?? dues[0];
      return { lot, dispute, place, dues, soonest, due: due?.due ?? { as: 'no-rule' }, missing: stillNeeded(dispute) };
    });
  };
}

export interface DisputeFilter {
  readonly show: 'open' | 'closed' | 'all';
  readonly side: 'any' | 'ours' | 'theirs';
  readonly search: string;
}

/** What fits a filter: open ones by their date and then those without, closed ones by when they ended, the latest first. */
export function filterDisputes(all: readonly ShownDispute[], { show, side, search }: DisputeFilter): ShownDispute[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  return all
    .filter(({ dispute }) => show === 'all' || (dispute.outcome === undefined) === (show === 'open'))
    .filter(({ dispute }) => side === 'any' || dispute.side === side)
    .filter((shown) => {
      const text = textOf(shown);
      return words.every((word) => text.includes(word));
    })
    .sort((a, b) => order(a) - order(b));
}

function textOf({ lot, dispute, place }: ShownDispute): string {
  const { vin = '', lotNumber = '' } = lot.facts;
  return [lotTitle(lot.facts), vin, lotNumber, place.name, REASON_WORDS[dispute.reason], dispute.words]
    .join(' ')
    .toLowerCase();
}

/** Later than any moment. */
const FAR = 1e14;
const order = ({ dispute, soonest }: ShownDispute): number =>
  dispute.outcome === undefined ? (soonest ?? FAR) : 3 * FAR - dispute.outcome.at;
