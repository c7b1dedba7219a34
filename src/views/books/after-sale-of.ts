import type { VenuePlace } from '../../domain/after-sale/venue-place.ts';
import { winMoney } from '../../domain/after-sale/win-money.ts';
import { doneAt } from '../../domain/after-sale/win-step.ts';
import type { PaperNote } from '../../domain/books/booking.ts';
import type { OpenSettlement } from '../../domain/books/folder/folder.ts';
import { undoesSale } from '../../domain/dispute/dispute.ts';
import { ENDING_WORDS } from '../../domain/dispute/ending-words.ts';
import { type Cents, cents, sumCents } from '../../domain/money/cents.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { NotedCost, NotedPayment } from '../../journal/states/books-state.ts';
import type { BookedLot } from '../sold/booked-lot.ts';
import { soldLotOf } from '../sold/sold-lot.ts';

/** A payment that was noted after the sale, as the books count it. */
export type StepPayment = NotedPayment & { readonly notedAfterSale: true };

/** What was noted after the sale and belongs in the folder: payments, when the car and its title came, what disputes left. */
export function afterSaleOf(
  lot: LotState,
  booked: BookedLot | undefined,
  costs: readonly NotedCost[],
  setup: Setup,
  place: VenuePlace,
) {
  const { zone } = setup.store;
  const sold = soldLotOf(lot, booked);
  const money = winMoney(sold, setup, place);
  const title = doneAt(sold.steps, 'title');
  const arrived = doneAt(sold.steps, 'deliver');
  const papers: readonly PaperNote[] =
    title === undefined ? [] : [{ lot: lot.id, paper: 'title', date: dateIn(zone, title) }];
  return {
    arrivedOn: arrived && dateIn(zone, arrived),
    papers,
    payments: notedPayments(lot, money?.unstated ?? cents(0), place.name, zone),
    notBilled: money?.notBilled,
    settlements: openSettlements(lot, costs, zone),
    undoneOn: undoneDay(lot, zone),
  };
}

/** Whether money was noted after the sale that no folder of a win would show. */
export const hasMoneyNoted = ({ after }: LotState): boolean =>
  [...(after?.steps.pay ?? []), ...(after?.steps.refund ?? [])].some(({ cents: amount = 0 }) => amount > 0) ||
  (after?.disputes ?? []).some(({ outcome }) => (outcome?.cents ?? 0) !== 0);

/** Each as one payment of the books, under the entry that noted it. @param unstated of those without an amount, together */
function notedPayments({ id, after }: LotState, unstated: Cents, payee: string, zone: Zone): StepPayment[] {
  let left = unstated;
  const payments = (sign: 1 | -1, step: 'pay' | 'refund') =>
    (after?.steps[step] ?? []).flatMap(({ at, cents: stated, entry, notedAt, author }): StepPayment[] => {
      const amount = stated ?? left;
      if (stated === undefined) left = cents(0);
      if (amount === 0) return [];
      const noted = { entry, notedAt, author, notedAfterSale: true as const };
      return [{ ...noted, key: `noted/${entry}`, lot: id, cents: cents(sign * amount), date: dateIn(zone, at), payee }];
    });
  return [...payments(1, 'pay'), ...payments(-1, 'refund')];
}

/** The store's day on which a purchase was canceled; undefined if it was not. */
function undoneDay({ after, sale }: LotState, zone: Zone): LocalDate | undefined {
  const won = sale?.result?.result.ended === 'won';
  // Money that a dispute about a lost lot brought is no part of any car's cost, so it counts as of the day it was agreed.
  const days = (after?.disputes ?? []).flatMap(({ outcome }) =>
    outcome !== undefined && (undoesSale(outcome.ended) || !won) ? dateIn(zone, outcome.at) : [],
  );
  return days.sort()[0];
}

function openSettlements({ after }: LotState, costs: readonly NotedCost[], zone: Zone): OpenSettlement[] {
  return (after?.disputes ?? []).flatMap(({ entry, outcome, at }): OpenSettlement[] => {
    const booked = sumCents(costs.filter(({ dispute }) => dispute === entry).map((cost) => cost.cents));
    const left = cents((outcome?.cents ?? 0) + booked);
    if (left === 0) return [];
    const ended = outcome && ENDING_WORDS[outcome.ended];
    return [{ dispute: entry, cents: left, date: dateIn(zone, outcome?.at ?? at), ended }];
  });
}

/** Disputes of a lot that are still open, and what is asked for in them. */
export function openDisputesOf({ after }: LotState): { readonly openDisputes: number; readonly disputed: Cents } {
  const open = (after?.disputes ?? []).filter(({ outcome }) => outcome === undefined);
  return {
    openDisputes: open.length,
    disputed: cents(open.reduce((sum, { askedCents }) => sum + (askedCents ?? 0), 0)),
  };
}
