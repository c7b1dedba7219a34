import { venuePlaces } from '../../domain/after-sale/venue-place.ts';
import { winStands } from '../../domain/after-sale/win.ts';
import { winMoney } from '../../domain/after-sale/win-money.ts';
import { type Cents, cents, ZERO } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { pricedLot } from '../../domain/plan/priced-lot.ts';
import type { Purse } from '../../domain/plan/purse.ts';
import type { PurseEntry } from '../../domain/setup/purse-entry.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { addDays, mondayOf, startOfDay } from '../../domain/time/calendar-day.ts';
import { type Instant, instant } from '../../domain/time/instant.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { HOUR, MINUTE } from '../../domain/time/units.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { PricingContext } from '../../domain/worksheet/pricing-context.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import { bookedLots } from '../sold/booked-lot.ts';
import { soldLotOf } from '../sold/sold-lot.ts';

/** The purse with what is promised already, as the Plan screen shows it. */
export interface PurseView {
  readonly purse: Purse;
  readonly entry: PurseEntry;
  /** The last day on which a lot may close that it is for. */
  readonly lastDay: LocalDate;
  /** What won cars still take of the cash and of the line. */
  readonly promised: { readonly cash: Cents; readonly line: Cents; readonly cars: number };
  /** Cars won since it was counted, each of which takes a place. */
  readonly placesTaken: number;
  /** What is wrong with it, each with what to do. */
  readonly faults: readonly string[];
}

export interface PurseFrom {
  readonly entry: PurseEntry;
  readonly setup: Setup;
  readonly context: PricingContext;
  readonly lots: readonly LotState[];
  readonly books: BooksState;
  readonly now: Instant;
}

/**
 * What there is to buy with. Cars won before the cash was counted take what was owed for them then; cars won since take all
 * that they cost at their price, recon and transport too, whether or not a bill has come.
 */
export function purseOf({ entry, setup, context, lots, books, now }: PurseFrom): PurseView {
  const { zone } = setup.store;
  const won = lots.filter((lot) => lot.sale?.result?.result.ended === 'won' && winStands(soldLotOf(lot)));
  const before = won.filter(({ sale }) => (sale?.result?.at ?? now) <= entry.countedAt);
  const since = won.filter(({ sale }) => (sale?.result?.at ?? now) > entry.countedAt);
  const takes = [
    ...owedAt(before, setup, books, entry.countedAt, context),
    ...since.map((lot) => costOf(lot, context)),
  ];
  const hasLine = entry.lineCents !== undefined;
  const line = hasLine ? cents(takes.reduce((sum, one) => sum + one.line, 0)) : ZERO;
  const cash = cents(takes.reduce((sum, one) => sum + one.cash + (hasLine ? 0 : one.line), 0));
  const lastDay = lastDayOf(entry, dateIn(zone, now));
  const counted = dateIn(zone, entry.countedAt);
  const left = entry.lineCents === undefined ? undefined : cents(entry.lineCents - line);
  const purse: Purse = {
    cash: cents(entry.cashCents - cash),
    ...(left !== undefined && { line: { free: cents(Math.max(0, left)) } }),
    ...(entry.places !== undefined && { places: entry.places - since.length }),
    flows: (entry.moves ?? [])
      .filter(({ date }) => date >= counted)
      // What comes in may come late in the day; what goes out may be asked for early.
      .map(({ date, cents: amount, what }) => ({
        at: amount < 0 ? startOfDay(date, zone) : instant(startOfDay(date, zone) + 18 * HOUR),
        cents: amount,
        what,
      })),
    until: instant(startOfDay(addDays(lastDay, 1), zone) - 1),
    reaction: setup.alerts.reactionMinutes * MINUTE,
    overChance: (entry.overspendPpm ?? 0) / 1_000_000,
  };
  const cars = takes.filter((one) => one.cash + one.line > 0).length;
  return {
    purse,
    entry,
    lastDay,
    promised: { cash, line, cars },
    placesTaken: since.length,
    faults: faultsOf(purse, left, lastDay, dateIn(zone, now)),
  };
}

function faultsOf(purse: Purse, line: Cents | undefined, lastDay: LocalDate, today: LocalDate): readonly string[] {
  return [
    ...(purse.cash < 0
      ? [
          `The purse is overdrawn: ${formatMoney(cents(-purse.cash))} more is promised for won cars than there is cash. Count the cash again, or bid on nothing more.`,
        ]
      : []),
    ...(line !== undefined && line < 0
      ? [`The floor line is overdrawn by ${formatMoney(cents(-line))}. Enter what is left of it.`]
      : []),
    ...(purse.places !== undefined && purse.places < 0
      ? [`The lot is over-full by ${-purse.places}. Enter the places left.`]
      : []),
    ...(lastDay < today ? ['The purse’s time is over. Set how long the next one is for.'] : []),
  ];
}

/** A weekend is the one of this week, its Sunday being the last day. */
const lastDayOf = ({ until }: PurseEntry, today: LocalDate): LocalDate =>
  until === 'weekend' ? addDays(mondayOf(today), 6) : until;

interface Taken {
  readonly cash: number;
  readonly line: number;
}

/** What was owed for won cars when the cash was counted: whatever was paid since was in the purse then. */
function owedAt(
  won: readonly LotState[],
  setup: Setup,
  books: BooksState,
  countedAt: Instant,
  context: PricingContext,
): readonly Taken[] {
  const known = {
    ...books,
    payments: books.payments.filter(({ notedAt }) => notedAt <= countedAt),
    floor: books.floor.filter(({ notedAt }) => notedAt <= countedAt),
  };
  const bookedOf = bookedLots(known, setup.store.zone);
  const placeOf = venuePlaces(setup);
  return won.map((lot) => {
    const money = winMoney(
      soldLotOf(paidUntil(lot, countedAt), bookedOf(lot.id, lot.facts)),
      setup,
      placeOf(lot.facts),
    );
    const owed = money === undefined ? 0 : money.toPay + Math.max(0, money.others);
    const onLine = Math.min(owed, costOf(lot, context).line);
    // The lender has advanced nothing yet where nothing was paid.
    return money?.paid === 0 ? { cash: owed - onLine, line: onLine } : { cash: owed, line: 0 };
  });
}

function paidUntil(lot: LotState, until: Instant): LotState {
  const pay = lot.after?.steps.pay;
  if (lot.after === undefined || pay === undefined) return lot;
  const steps = { ...lot.after.steps, pay: pay.filter(({ notedAt }) => notedAt <= until) };
  return { ...lot, after: { ...lot.after, steps } };
}

/** What a won car takes at its price: from the line as its worksheet pays for it, the rest from the cash. */
function costOf({ facts, sale }: LotState, context: PricingContext): Taken {
  const result = sale?.result?.result;
  if (result?.ended !== 'won') return { cash: 0, line: 0 };
  const priced = pricedLot(facts, context);
  const [way] = priced.ok ? priced.value.waysAt(result.hammerCents) : [];
  return way === undefined ? { cash: result.hammerCents, line: 0 } : { cash: way.cash, line: way.line };
}
