import { editionAt } from '../fees/edition-at.ts';
import { totalFees } from '../fees/fees-at.ts';
import { type Cents, cents, sumCents, ZERO } from '../money/cents.ts';
import type { Setup } from '../setup/setup.ts';
import { dateIn } from '../time/wall-clock.ts';
import { type BookedMoney, NOTHING_BOOKED } from './booked-money.ts';
import type { VenuePlace } from './venue-place.ts';
import { hammerOf, type SoldLot, winStands } from './win.ts';

/** What the venue is owed for a win and what it got; each amount 0 or more, unless it says otherwise. */
export interface WinMoney {
  readonly hammer: Cents;
  /** The buy fees at the hammer price; undefined if the setup does not know them. */
  readonly fees: Cents | undefined;
  /** What the sale has billed by the books; undefined while it has not. */
  readonly billed: Cents | undefined;
  /** Price and fees that are owed though no bill is booked yet. */
  readonly notBilled: Cents;
  /** What disputes brought; negative when they cost. */
  readonly settled: Cents;
  /** The part of it that is not booked; negative when it is we who pay, or when more is booked than was agreed. */
  readonly notSettled: Cents;
  /** Paid, by us or the lender, less what came back. */
  readonly paid: Cents;
  /** What payments that were noted without an amount came to, together. */
  readonly unstated: Cents;
  readonly toPay: Cents;
  readonly toComeBack: Cents;
  /** Owed to others than the sale, as booked; negative when too much was paid. */
  readonly others: Cents;
}

/**
 * The money between us and the venue: what it billed by the books, and what it is expected to bill where nothing is booked.
 * A payment that was noted without an amount was for all that was owed. Of a sale that was undone nothing is owed, and
 * all that was paid is to come back.
 * @returns undefined for a lot that was not won
 */
export function winMoney(lot: SoldLot, setup: Pick<Setup, 'feeSchedules'>, place: VenuePlace): WinMoney | undefined {
  const hammer = hammerOf(lot);
  if (hammer === undefined) return undefined;
  const fees = buyFees(lot, hammer, setup, place);
  const { bills, settled: booked, others } = lot.booked ?? NOTHING_BOOKED;
  const owing = bills.filter(({ paid }) => paid === 'owed');
  const expected = notBilledYet(hammer, fees, bills);
  const stands = winStands(lot);
  const taken = stands ? ZERO : total(owing.filter(goesBack));
  const settled = total(lot.disputes.map(({ outcome }) => ({ cents: outcome?.cents ?? ZERO })));
  const payments = (lot.steps.pay ?? []).map((payment) => payment.cents);
  const stated = sumCents(payments.map((amount) => amount ?? ZERO));
  // However often it was noted, all that was owed was paid once.
  const unstated = payments.includes(undefined) ? Math.max(0, total(owing) + expected - stated) : 0;
  const back = total((lot.steps.refund ?? []).map((refund) => ({ cents: refund.cents ?? ZERO })));
  const paid = stated + unstated - back;
  const open = total(owing) - taken + (stands ? expected : 0) - (settled - booked) - paid;
  return {
    hammer,
    fees,
    billed: bills.length === 0 ? undefined : total(bills),
    notBilled: stands ? expected : ZERO,
    settled,
    notSettled: cents(settled - booked),
    paid: cents(Math.max(0, paid)),
    unstated: cents(unstated),
    toPay: cents(Math.max(0, open)),
    toComeBack: cents(Math.max(0, -open)),
    others,
  };
}

/** The price until it is billed, and the fees until one is. */
function notBilledYet(hammer: Cents, fees: Cents | undefined, bills: BookedMoney['bills']): Cents {
  const has = (cost: string) => bills.some((bill) => bill.cost === cost);
  return cents((has('hammer') ? 0 : hammer) + (has('fee') ? 0 : (fees ?? 0)));
}

/** What the sale billed for the car itself goes back to it with the car. */
export const goesBack = ({ cost, paid }: { readonly cost: string; readonly paid: string }): boolean =>
  paid === 'owed' && (cost === 'hammer' || cost === 'fee');

const total = (some: readonly { readonly cents: Cents }[]): Cents => sumCents(some.map((one) => one.cents));

function buyFees(
  { facts, ended }: SoldLot,
  hammer: Cents,
  { feeSchedules }: Pick<Setup, 'feeSchedules'>,
  { venue }: VenuePlace,
): Cents | undefined {
  if (venue === undefined) return undefined;
  const at = facts.close?.instant ?? ended?.at;
  const date = at === undefined ? undefined : dateIn(venue.zone, at);
  let total = 0;
  for (const id of venue.feeScheduleIds) {
    const schedule = feeSchedules.find((each) => each.id === id);
    const edition = schedule && editionAt(schedule, date);
    if (edition === undefined || !edition.ok) return undefined;
    total += totalFees(hammer, edition.value.tables);
    for (const charge of edition.value.charges) total += charge.cents;
  }
  return cents(total);
}
