import { type Cents, cents } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import { rateOf } from '../money/rounding.ts';
import type { LocalDate } from '../time/local-date.ts';
import { sayDate } from '../time/say-time.ts';
import type { FloorPlan } from './carrying-rules.ts';
import { addDays } from './day-count.ts';

/** Own cash that has to be there on a day. */
export interface CashDue {
  readonly what: 'sale' | 'recon' | 'curtailment';
  readonly cents: Cents;
  /** Absent where only the sale, or the shop, knows it. */
  readonly date?: LocalDate;
}

export interface CashNeed {
  /** What the sale and the carrier must be paid from own cash. */
  readonly atOnce: Cents;
  /** In the order in which it falls due; curtailments only if the car is still unsold then. */
  readonly due: readonly CashDue[];
  /** The whole of it in a sentence. */
  readonly sentence: string;
}

/**
 * How much own cash a car needs, and by when.
 * @param sums the deal at the price in question, as its breakdown has them
 * @param sale when the car is bought, and when the sale wants its money, where that is known
 * @param plan the floor plan, when it goes on it
 */
export function cashNeed(
  sums: { readonly allIn: Cents; readonly financed: Cents; readonly cash: Cents },
  sale: { readonly date?: LocalDate; readonly payBy?: LocalDate } = {},
  plan?: FloorPlan,
): CashNeed {
  const atOnce = cents(sums.allIn - sums.financed);
  const due: CashDue[] = [];
  if (atOnce > 0) due.push({ what: 'sale', cents: atOnce, ...(sale.payBy && { date: sale.payBy }) });
  const recon = cents(sums.cash - atOnce);
  if (recon > 0) due.push({ what: 'recon', cents: recon });
  for (const { day, sharePpm } of (sums.financed > 0 ? plan?.curtailments : undefined) ?? []) {
    const share = rateOf(sums.financed, sharePpm);
    if (share > 0) due.push({ what: 'curtailment', cents: share, ...(sale.date && { date: addDays(sale.date, day) }) });
  }
  return { atOnce, due, sentence: inWords(sums.financed, atOnce, recon, sale.payBy) };
}

function inWords(financed: Cents, atOnce: Cents, recon: Cents, payBy: LocalDate | undefined): string {
  const when = payBy === undefined ? 'by the venue’s payment deadline' : `by ${sayDate(payBy)}`;
  const later = recon > 0 ? `, and ${formatMoney(recon)} for recon` : '';
  if (financed === 0) return `It takes ${formatMoney(atOnce)} of your own cash ${when}${later}.`;
  return `The floor plan pays ${formatMoney(financed)}; you pay ${formatMoney(atOnce)} ${when}${later}.`;
}
