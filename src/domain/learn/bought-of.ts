import type { CostKind } from '../accounts/cost-kind.ts';
import { goesBack } from '../after-sale/win-money.ts';
import { compareLines } from '../books/folder/compare-lines.ts';
import type { PurchaseFolder } from '../books/folder/folder.ts';
import { type Cents, cents, sumCents } from '../money/cents.ts';
import { daysBetween } from '../time/calendar-day.ts';
import type { LocalDate } from '../time/local-date.ts';
import type { Forecast } from './forecast.ts';
import type { Bought } from './happened.ts';

/**
 * What a purchase came to, held against the forecast of the moment at which its sale closed.
 * @param today in the store's zone
 * @returns null for a folder of a lot that was not won
 */
export function boughtOf(
  folder: PurchaseFolder,
  { purchase }: Pick<Forecast, 'purchase'>,
  today: LocalDate,
): Bought | null {
  const { won, costs, outcome, stage, undoneOn, settlements = [] } = folder;
  if (won === null) return null;
  const billed = (...kinds: readonly CostKind[]): Cents | null => {
    const own = costs.filter(({ cost }) => kinds.includes(cost));
    return own.length === 0 ? null : sumCents(own.map((line) => line.cents));
  };
  const expected = purchase?.lines ?? [];
  const [hammer, fees, transport] = [billed('hammer'), billed('fee'), billed('transport')];
  const due = (kind: CostKind, actual: Cents | null): Cents | null =>
    actual ?? (expected.some(({ cost }) => cost === kind) ? null : cents(0));
  const parts = [hammer, due('fee', fees), due('transport', transport)];
  const whole = parts.filter((part) => part !== null);
  const from = folder.arrivedOn ?? won.date;
  const until = outcome?.date ?? undoneOn ?? today;
  return {
    lines: compareLines(expected, costs),
    hammer,
    fees,
    transport,
    recon: billed('recon'),
    interest: billed('interest', 'floor-fee'),
    other: billed('other', 'sales-tax') ?? cents(0),
    allIn: whole.length === parts.length ? sumCents(whole) : null,
    days: Math.max(0, daysBetween(from, until)),
    sold: stage === 'sold',
    sale: stage === 'sold' && outcome ? { cents: outcome.priceCents, date: outcome.date, buyer: outcome.buyer } : null,
    lost: stage === 'undone' ? lostOn(costs, settlements) : null,
  };
}

/** What the sale billed for the car goes back with it; everything else was paid for nothing, less what a dispute brings. */
function lostOn(costs: PurchaseFolder['costs'], settlements: NonNullable<PurchaseFolder['settlements']>): Cents {
  const stayed = costs.filter((cost) => !goesBack(cost)).map((line) => line.cents);
  return cents(sumCents(stayed) - sumCents(settlements.map((one) => one.cents)));
}
