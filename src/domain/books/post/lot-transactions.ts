import type { AccountKey, Treatment } from '../../accounts/accounts.ts';
import type { CostKind } from '../../accounts/cost-kind.ts';
import type { LotId } from '../../lot/lot.ts';
import { type Cents, cents, sumCents } from '../../money/cents.ts';
import type { LocalDate } from '../../time/local-date.ts';
import type { BookedDocument, CarOutcome } from '../booking.ts';
import type { CarAccrual } from './accrual.ts';
import { accrualTransactions } from './accrual-transactions.ts';
import type { Posting, Transaction } from './transaction.ts';

/** One cost of a car, with what it stands for in the journal. */
export interface CarCost {
  readonly key: string;
  readonly cost: CostKind;
  readonly label: string;
  readonly cents: Cents;
  readonly date: LocalDate;
  readonly paid: 'owed' | 'bank';
  readonly payee?: string | undefined;
  readonly document?: BookedDocument | undefined;
}

/** Money that went to (or came back from) those who sent bills for a car. */
export interface CarPayment {
  readonly key: string;
  readonly cents: Cents;
  readonly date: LocalDate;
  readonly payee?: string | undefined;
  readonly document?: BookedDocument | undefined;
}

export interface CarFloorMove {
  readonly key: string;
  readonly move: 'draw' | 'payoff';
  readonly cents: Cents;
  readonly date: LocalDate;
  readonly document?: BookedDocument | undefined;
}

/** Everything that was booked for one car. */
export interface CarBookings {
  readonly lot: LotId;
  /** As the journal names it. */
  readonly name: string;
  readonly costs: readonly CarCost[];
  readonly payments: readonly CarPayment[];
  readonly floor: readonly CarFloorMove[];
  readonly outcome?: Pick<CarOutcome, 'date' | 'priceCents' | 'buyer'> | undefined;
  /** The day on which the purchase itself was canceled, if it was. */
  readonly undoneOn?: LocalDate | undefined;
  /** What a month's end counts as owed for it without a bill, and whose bill that will be. */
  readonly accrual?: CarAccrual | undefined;
  readonly venue?: string | undefined;
}

/**
 * The bookings of one car as double entry. Bills are owed until the bank or the lender pays them; the car's cost goes to
 * cost of sales when it sells. When the purchase is undone, what the sale billed goes back against what is owed to the
 * sale (a refund is a payment below zero), and what nobody gives back, freight and recon, becomes an expense. What is
 * billed after the car went away goes where its cost went.
 */
export function lotTransactions(car: CarBookings, treatment: Treatment): Transaction[] {
  const gone = goneOn(car);
  const before = (date: LocalDate) => gone === undefined || date <= gone;
  const late: AccountKey = car.undoneOn === undefined ? 'costOfSales' : 'undone';
  const accountOf = ({ cost, date }: CarCost): AccountKey => {
    if (treatment[cost] === 'expense') return cost;
    return before(date) ? 'inventory' : late;
  };
  const made: Transaction[] = [
    ...car.costs.map((cost) => {
      const credit = cost.paid === 'owed' ? 'payable' : 'bank';
      return between(car, cost, accountOf(cost), credit, named(cost.payee, cost.label));
    }),
    ...car.payments.map((payment) =>
      between(car, payment, 'payable', 'bank', named(payment.payee, payment.cents < 0 ? 'Refund' : 'Payment')),
    ),
    ...car.floor.map((move) =>
      move.move === 'draw'
        ? between(car, move, 'payable', 'floor', 'Floor-plan advance')
        : between(car, move, 'floor', 'bank', 'Floor-plan payoff'),
    ),
    ...accrualTransactions(
      { ...car, payee: car.venue, soldOn: car.undoneOn === undefined ? car.outcome?.date : undefined },
      treatment,
    ),
  ];
  const kept = car.costs.filter((cost) => accountOf(cost) === 'inventory');
  if (car.undoneOn !== undefined) return [...made, ...undone(car, kept, car.undoneOn)];
  return car.outcome === undefined ? made : [...made, ...sold(car, kept, car.outcome)];
}

/** The day from which the car is no longer in stock. */
const goneOn = ({ undoneOn, outcome }: CarBookings): LocalDate | undefined => undoneOn ?? outcome?.date;

function sold(car: CarBookings, kept: readonly CarCost[], outcome: NonNullable<CarBookings['outcome']>): Transaction[] {
  const { date, priceCents, buyer } = outcome;
  const income = buyer === 'wholesale' ? 'wholesale' : 'retail';
  return [
    between(car, { key: `${car.lot}/sold`, date, cents: priceCents }, 'bank', income, SOLD[buyer]),
    between(
      car,
      { key: `${car.lot}/cost-of-sales`, date, cents: sumCents(kept.map((cost) => cost.cents)) },
      'costOfSales',
      'inventory',
      'Cost of car sold',
    ),
  ];
}

const SOLD = { retail: 'Sold at retail', business: 'Sold to a business', wholesale: 'Sold at wholesale' } as const;

function undone(car: CarBookings, kept: readonly CarCost[], date: LocalDate): Transaction[] {
  const isBilled = ({ cost, paid }: CarCost) => paid === 'owed' && (cost === 'hammer' || cost === 'fee');
  const back = sumCents(kept.filter(isBilled).map((cost) => cost.cents));
  const lost = sumCents(kept.filter((cost) => !isBilled(cost)).map((cost) => cost.cents));
  return [
    between(car, { key: `${car.lot}/undone`, date, cents: back }, 'payable', 'inventory', 'Purchase canceled'),
    between(
      car,
      { key: `${car.lot}/undone-costs`, date, cents: lost },
      'undone',
      'inventory',
      'Costs of a canceled purchase, not refunded',
    ),
  ];
}

/** What every booking has. */
interface Booked {
  readonly key: string;
  readonly date: LocalDate;
  readonly cents: Cents;
  readonly payee?: string | undefined;
  readonly document?: BookedDocument | undefined;
}

/** From one account to another; an amount below zero goes the other way, and nothing makes no postings. */
function between(
  car: CarBookings,
  { key, date, cents: amount, payee, document: paper }: Booked,
  debit: AccountKey,
  credit: AccountKey,
  what: string,
): Transaction {
  const postings: Posting[] =
    amount === 0
      ? []
      : [
          { account: debit, cents: amount },
          { account: credit, cents: cents(-amount) },
        ];
  return {
    key,
    lot: car.lot,
    date,
    text: `${what} · ${car.name}`.slice(0, 300),
    postings,
    ...(payee !== undefined && { payee }),
    ...(paper?.number !== undefined && { number: paper.number }),
  };
}

const named = (payee: string | undefined, what: string): string => (payee === undefined ? what : `${payee}: ${what}`);
