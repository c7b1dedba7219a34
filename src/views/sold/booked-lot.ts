import type { CostKind } from '../../domain/accounts/cost-kind.ts';
import type { BookedMoney } from '../../domain/after-sale/booked-money.ts';
import type { StepDone } from '../../domain/after-sale/win-step.ts';
import type { LotFacts, LotId } from '../../domain/lot/lot.ts';
import { type Cents, cents, sumCents } from '../../domain/money/cents.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../domain/time/local-date.ts';
import { resolveWallTime } from '../../domain/time/resolve-wall-time.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { byLot } from '../../folds/by-lot.ts';
import type { BooksState, NotedCost, NotedPaper, NotedPayment } from '../../journal/states/books-state.ts';
import type { Noted } from '../../journal/states/noted.ts';

/** A step that is known from the books. */
export type BookedStep = StepDone & Noted & { readonly inBooks: true };

/** What the books say of one lot after its sale: money, and steps that are done because they are booked. */
export interface BookedLot {
  readonly money: BookedMoney;
  readonly pay: readonly BookedStep[];
  readonly refund: readonly BookedStep[];
  readonly fund: readonly BookedStep[];
  /** The last word on whether the title is in: without a date it is not. */
  readonly title?: NotedPaper & { readonly at: Instant };
}

/** What the books say of each lot; undefined for one of which they say nothing. */
export function bookedLots(books: BooksState, zone: Zone): (id: LotId, facts: LotFacts) => BookedLot | undefined {
  const costs = byLot(books.costs);
  const payments = byLot(books.payments);
  const draws = byLot(books.floor.filter(({ move }) => move === 'draw'));
  const titles = byLot(books.papers.filter(({ paper }) => paper === 'title'));
  const step = (noted: Noted & { readonly date: LocalDate; readonly cents: Cents }): BookedStep => ({
    at: noonOf(noted.date, zone),
    cents: cents(Math.abs(noted.cents)),
    entry: noted.entry,
    notedAt: noted.notedAt,
    author: noted.author,
    inBooks: true,
  });
  return (id, facts) => {
    const [billed, paid, drawn] = [costs.get(id) ?? [], payments.get(id) ?? [], draws.get(id) ?? []];
    const title = titles.get(id)?.at(-1);
    if (billed.length + paid.length + drawn.length === 0 && title === undefined) return undefined;
    const isOthers = othersIn(billed, facts);
    const toSale = paid.filter((payment) => !isOthers(payment.payee));
    return {
      money: moneyOf(billed, paid, isOthers),
      pay: [...toSale.filter((payment) => payment.cents > 0), ...drawn].map(step),
      refund: toSale.filter((payment) => payment.cents < 0).map(step),
      fund: drawn.map(step),
      ...(title !== undefined && { title: { ...title, at: noonOf(title.date ?? dateIn(zone, title.notedAt), zone) } }),
    };
  };
}

function moneyOf(
  costs: readonly NotedCost[],
  payments: readonly NotedPayment[],
  isOthers: (payee: string | undefined) => boolean,
): BookedMoney {
  const total = (some: readonly { readonly cents: Cents }[]) => sumCents(some.map((one) => one.cents));
  const theirs = costs.filter(({ paid, payee }) => paid === 'owed' && isOthers(payee));
  return {
    // What was paid at once to nobody in particular is of no concern to the sale.
    bills: costs.filter((cost) => isSales(cost) || (cost.paid === 'owed' && !isOthers(cost.payee))),
    settled: cents(-total(costs.filter(({ dispute }) => dispute !== undefined))),
    others: cents(total(theirs) - total(payments.filter(({ payee }) => isOthers(payee)))),
  };
}

/** What of a cost tells who is owed for it. */
interface PayeeOfCost {
  readonly cost: CostKind;
  readonly payee?: string | undefined;
  readonly dispute?: string | undefined;
}

/**
 * True when the payee is not the auction: he sent bills for freight or work and none for the price or a fee. A payee
 * without a name is the auction.
 */
export function othersIn(
  costs: readonly PayeeOfCost[],
  { venueName }: LotFacts,
): (payee: string | undefined) => boolean {
  const names = (some: readonly PayeeOfCost[]) =>
    some.flatMap(({ payee }) => (payee === undefined ? [] : plainWords(payee)));
  const sale = new Set([...names(costs.filter(isSales)), plainWords(venueName ?? '')]);
  const others = new Set(names(costs.filter((cost) => !isSales(cost))).filter((name) => !sale.has(name)));
  return (payee) => payee !== undefined && others.has(plainWords(payee));
}

const isSales = ({ cost, dispute }: PayeeOfCost): boolean =>
  cost === 'hammer' || cost === 'fee' || dispute !== undefined;

/** Noon in the store's zone, which is the same day at every venue near enough to buy at. */
function noonOf(date: LocalDate, zone: Zone): Instant {
  return resolveWallTime({ date, time: '12:00' as LocalTime }, zone).earliest;
}

/** Finds what the books say of a lot. */
export type BookedLotOf = ReturnType<typeof bookedLots>;
