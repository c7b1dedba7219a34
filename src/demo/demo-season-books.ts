import { expectedPurchase } from '../domain/books/folder/expected.ts';
import { cents } from '../domain/money/cents.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import { DAY } from '../domain/time/units.ts';
import type { PricingContext } from '../domain/worksheet/pricing-context.ts';
import type { BookedHappening } from '../journal/happenings/books.ts';
import type { DemoWin } from './demo-books.ts';
import { even } from './demo-even.ts';

/** What was booked, and when. */
export interface SeasonBooking {
  readonly at: Instant;
  readonly happening: BookedHappening;
}

/** What was booked for one of the season's wins: the sale's bill, freight, recon, and what it sold for. One car still stands. */
export function seasonBooks(win: DemoWin, n: number, context: PricingContext, now: Instant): readonly SeasonBooking[] {
  const { lot, facts, hammer, day } = win;
  const { lines } = expectedPurchase(facts, context, hammer);
  const sold = addDays(day, 5 + Math.round(14 + 55 * even(n, 5)));
  const stands = n % 13 === 4;
  const bill = (date: LocalDate, paid: 'bank' | 'owed', own: typeof lines, payee: string): BookedHappening => ({
    kind: 'costs-booked',
    date,
    paid,
    payee,
    lines: own.map(({ key, cost, label, cents: amount }) => ({
      lot,
      cost,
      label: label.replace(/ \(.*\)$/, ''),
      cents: billedFor(facts.venueId, cost, label, amount, n),
      against: key,
    })),
  });
  const of = (...kinds: readonly string[]) => lines.filter(({ cost }) => kinds.includes(cost));
  const payee = facts.venueName ?? 'Auction';
  const dated: [LocalDate, BookedHappening][] = [
    [addDays(day, 1), bill(addDays(day, 1), 'bank', of('hammer', 'fee'), payee)],
    [addDays(day, 6), bill(addDays(day, 6), 'bank', of('transport'), 'A carrier')],
    [addDays(day, 9), bill(addDays(day, 9), 'bank', of('recon'), 'The shop')],
    ...(['bill-of-sale', 'odometer-statement', 'transport-receipt'] as const).map(
      (paper): [LocalDate, BookedHappening] => [
        addDays(day, 6),
        { kind: 'paper-noted', lot, paper, date: addDays(day, 6) },
      ],
    ),
  ];
  if (!stands) {
    const price = Math.round(((facts.retail?.likely ?? hammer * 1.4) * broughtOf(facts.model, n)) / 5000) * 5000;
    const buyer = n % 19 === 9 ? 'wholesale' : 'retail';
    dated.push([sold, { kind: 'outcome-booked', lot, date: sold, priceCents: cents(price), buyer }]);
  }
  return dated
    .map(([date, happening]) => ({ at: instant(Date.parse(`${date}T23:00Z`)), happening }))
    .filter(({ at, happening }) => at < now - DAY && (happening.kind !== 'costs-booked' || happening.lines.length > 0));
}

/** What a car brought of its estimate: one model was always thought too dear. */
const broughtOf = (model: string | undefined, n: number): number =>
  (model === 'Hauler 20' ? 0.92 : 0.99) + 0.22 * (even(n, 6) + even(n, 1) - 1);

/** Tires cost more than thought, and one venue adds a charge that its schedule does not name. */
function billedFor(venue: string | undefined, cost: string, label: string, amount: number, n: number) {
  if (cost === 'fee' && venue === 'fogline') return cents(amount + 2500);
  if (cost !== 'recon' && cost !== 'transport') return cents(amount);
  const usual = /tires/i.test(label) ? 1.24 : cost === 'transport' ? 1.02 : 1.0;
  return cents(Math.max(500, Math.round((amount * (usual + 0.4 * (even(n, 4) - 0.5))) / 500) * 500));
}
