import { expectedPurchase } from '../domain/books/folder/expected.ts';
import { floorPlanInterest } from '../domain/carrying/floor-plan-interest.ts';
import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import { type Cents, cents, ZERO } from '../domain/money/cents.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import { DAY } from '../domain/time/units.ts';
import { type PricingContext, pricingContext } from '../domain/worksheet/pricing-context.ts';
import type { BookedHappening } from '../journal/happenings/books.ts';

/** A lot of the demo that was won. */
export interface DemoWin {
  readonly lot: LotId;
  readonly facts: LotFacts;
  readonly hammer: Cents;
  readonly day: LocalDate;
}

/**
 * What the invented bookkeeper has booked so far: the oldest win is sold with a profit, the next at wholesale, the third
 * stands on the floor plan with a fee that was too high; the others still wait for their invoice.
 * @param wins the oldest first
 */
export function demoBooks(wins: readonly DemoWin[], setup: Setup, today: LocalDate): BookedHappening[] {
  const context = pricingContext(setup);
  const [first, second, third] = wins;
  return [
    ...(first === undefined ? [] : purchase(first, context, 0)),
    ...(first === undefined ? [] : sale(first, context, 'retail', 1.02, Math.min(17, daysUntil(first, today)))),
    ...(second === undefined
      ? []
      : [
          ...purchase(second, context, 0),
          ...sale(second, context, 'wholesale', 0.78, Math.min(9, daysUntil(second, today))),
        ]),
    ...(third === undefined ? [] : purchase(third, context, 2500)),
  ];
}

const daysUntil = ({ day }: DemoWin, today: LocalDate): number =>
  Math.max(0, Math.round((Date.parse(today) - Date.parse(day)) / DAY));

/** The sale's bill, paid by the lender and the bank, and freight and recon a little off what was expected. */
function purchase(win: DemoWin, context: PricingContext, tooMuch: number): BookedHappening[] {
  const { lot, facts, day } = win;
  const { lines, billed, drawn } = purchaseMoney(win, context);
  const costs = billed.map(({ key, cost, label, cents: amount }) => ({
    lot,
    cost,
    label,
    cents: cents(amount + (key === 'fee-0' ? tooMuch : 0)),
    against: key,
    date: day,
    number: `4${facts.lotNumber ?? '0'}`,
  }));
  const bill = costs.reduce((sum, line) => sum + line.cents, 0);
  const others = lines.filter(({ cost }) => cost === 'transport' || cost === 'recon');
  return [
    {
      kind: 'invoice-confirmed',
      venueId: facts.venueId ?? '',
      payee: facts.venueName ?? 'Auction',
      document: { file: 'statement.csv' },
      costs,
      payments: [],
    },
    ...(drawn > 0 ? [{ kind: 'floor-booked' as const, lot, move: 'draw' as const, cents: drawn, date: day }] : []),
    ...(drawn < bill
      ? [
          {
            kind: 'payment-booked' as const,
            date: addDays(day, 2),
            payee: facts.venueName ?? 'Auction',
            lines: [{ lot, cents: cents(bill - drawn) }],
          },
        ]
      : []),
    ...others.map(({ key, cost, label, cents: amount }, i): BookedHappening => {
      const share = [1.08, 0.94, 1.31][i % 3] ?? 1;
      const real = cents(Math.round((amount * share) / 500) * 500);
      return {
        kind: 'costs-booked',
        date: addDays(day, 4 + i),
        paid: 'bank',
        payee: cost === 'transport' ? 'A carrier' : 'The shop',
        lines: [{ lot, cost, label: label.replace(/ \(.*\)$/, ''), cents: real, against: key }],
      };
    }),
    { kind: 'paper-noted', lot, paper: 'bill-of-sale', date: day },
    { kind: 'paper-noted', lot, paper: 'odometer-statement', date: day },
  ];
}

/** The car goes away: the lender is paid back with interest, and the title has come. */
function sale(
  win: DemoWin,
  context: PricingContext,
  buyer: 'retail' | 'wholesale',
  share: number,
  days: number,
): BookedHappening[] {
  const { lot, facts, hammer, day } = win;
  const price = cents(Math.round(((facts.retail?.likely ?? hammer * 1.4) * share) / 5000) * 5000);
  const date = addDays(day, days);
  const drawn = purchaseMoney(win, context).drawn;
  const plan = context.setup.carrying.floorPlan;
  const interest = plan === undefined ? ZERO : floorPlanInterest(drawn, plan, day, date).interest;
  return [
    { kind: 'paper-noted', lot, paper: 'title', date: addDays(day, Math.min(8, days)) },
    { kind: 'outcome-booked', lot, date, priceCents: price, buyer },
    ...(drawn === 0 ? [] : [{ kind: 'floor-booked' as const, lot, move: 'payoff' as const, cents: drawn, date }]),
    ...(interest === 0
      ? []
      : [
          {
            kind: 'costs-booked' as const,
            date,
            paid: 'bank' as const,
            payee: 'The lender',
            lines: [
              { lot, cost: 'interest' as const, label: 'Floor-plan interest', cents: interest, against: 'interest' },
            ],
          },
        ]),
  ];
}

/** What the sale billed as expected, and how much of it the lender paid. */
function purchaseMoney({ facts, hammer }: DemoWin, context: PricingContext) {
  const { lines, financed } = expectedPurchase(facts, context, hammer);
  const billed = lines.filter(({ cost }) => cost === 'hammer' || cost === 'fee');
  const bill = billed.reduce((sum, line) => sum + line.cents, 0);
  return { lines, billed, drawn: cents(Math.min(bill, financed ?? 0)) };
}
