import { type ToDo, toDosOf } from '../../domain/after-sale/to-do.ts';
import { type VenuePlace, venuePlaces } from '../../domain/after-sale/venue-place.ts';
import { attemptEach, type CantWorkOut } from '../../domain/attempt.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { sayTime } from '../../domain/time/say-time.ts';
import { DAY } from '../../domain/time/units.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import { bookedLots } from '../sold/booked-lot.ts';
import { soldLotOf } from '../sold/sold-lot.ts';

/** A deadline after a sale, in the words of an alert. */
export interface AfterSaleDeadline {
  readonly key: string;
  readonly at: Instant;
  /** Minutes before it at which it is called, the earliest first. */
  readonly leads: readonly number[];
  readonly title: string;
  readonly body: string;
  readonly route: string;
  readonly quiet?: boolean;
}

/** What is overdue by more than this is on the To do list only, and gets no reminder. */
const LATE_MS = 7 * DAY;

/** Every deadline of these lots in which something is left to do. */
export function afterSaleDeadlines(
  lots: readonly LotState[],
  books: BooksState,
  setup: Setup,
  now: Instant,
): AfterSaleDeadline[] {
  const bookedOf = bookedLots(books, setup.store.zone);
  const placeOf = venuePlaces(setup);
  const { done, failed } = attemptEach(lots, (lot) => {
    const place = placeOf(lot.facts);
    return toDosOf(soldLotOf(lot, bookedOf(lot.id, lot.facts)), setup, place).flatMap((toDo) => {
      if (toDo.due.as !== 'at' || toDo.due.at < now - LATE_MS) return [];
      return [inWords(lot, toDo, toDo.due.at, place, setup)];
    });
  });
  return [...done.flat(), ...failed.map(({ item, why }) => notWorkedOut(item, why))];
}

/** Of a lot whose dates can't be worked out that itself is said, once: somebody has to look at its venue's terms. */
function notWorkedOut(lot: LotState, { message }: CantWorkOut): AfterSaleDeadline {
  return {
    key: `after-${lot.id}-not-worked-out`,
    // The same at every look, so that it is said once.
    at: lot.sale?.result?.at ?? lot.changedAt,
    leads: [0],
    title: `Dates after the sale, ${lotTitle(lot.facts)}`,
    body: message,
    route: `#/life/${lot.id}`,
  };
}

function inWords(lot: LotState, toDo: ToDo, at: Instant, place: VenuePlace, setup: Setup): AfterSaleDeadline {
  const dispute = toDo.dispute === undefined ? undefined : lot.after?.disputes[toDo.dispute];
  const missing = toDo.needs?.length ?? 0;
  const sentences = [
    `${place.name}, until ${sayTime(at, setup.store.zone)}.`,
    toDo.cents === undefined || toDo.cents === 0 ? '' : `${formatMoney(toDo.cents)}.`,
    missing === 0 ? '' : `Still missing: ${toDo.needs?.join(', ')}.`,
  ];
  return {
    // By the dispute's own entry: its place among the lot's disputes changes when an earlier one is undone.
    key:
      dispute === undefined ? `after-${lot.id}-${toDo.key}` : `dispute-${dispute.entry}-${toDo.key.split('-').at(-1)}`,
    at,
    leads: setup.alerts.deadlineLeadMinutes,
    title: `${toDo.what}, ${lotTitle(lot.facts)}`,
    body: sentences.filter(Boolean).join(' '),
    route: dispute === undefined ? `#/won/${lot.id}` : `#/dispute/${dispute.entry}`,
    // The title is the seller's to send, and a look at the car nobody else waits for.
    ...((toDo.key === 'title' || toDo.kind === 'look-over') && { quiet: true }),
  };
}
