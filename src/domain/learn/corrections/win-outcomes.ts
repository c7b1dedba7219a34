import { appraiseMoney } from '../../appraisal/appraise.ts';
import type { Corrections } from '../../correction/corrections.ts';
import { breakdownAt } from '../../deal/price-breakdown.ts';
import { dealTotals } from '../../deal/price-sums.ts';
import { type Cents, cents } from '../../money/cents.ts';
import { type Instant, instant } from '../../time/instant.ts';
import { dealOf } from '../../worksheet/deal-of.ts';
import { type PricingContext, pricingContext } from '../../worksheet/pricing-context.ts';
import type { PastLot } from '../happened.ts';
import type { WinCase } from './win-correction.ts';

/** When the last word on each thing about a lot was written down: nothing counts at a moment before it. */
export interface KnownTimes {
  readonly ended: Instant;
  readonly sold?: Instant | undefined;
  /** Its bills of any kind. */
  readonly billed?: Instant | undefined;
  readonly canceled?: Instant | undefined;
  /** The day on which it sold, not when that was written down. */
  readonly soldOn?: Instant | undefined;
}

/** A past lot with those times. */
export interface TimedLot {
  readonly past: PastLot;
  readonly known: KnownTimes;
}

/** Contexts of the setups that held, with these corrections in place of those that were on then; each made once. */
export function contextsWith(corrections: Corrections): (context: PricingContext) => PricingContext {
  const made = new Map<object, PricingContext>();
  return ({ given }) => {
    const context = made.get(given) ?? pricingContext({ ...given, corrections });
    made.set(given, context);
    return context;
  };
}

export type ContextOf = ReturnType<typeof contextsWith>;

/** What was expected of a lot at the price paid, by another context than the one that held. */
export function dealUnder({ past }: TimedLot, contextOf: ContextOf) {
  const { facts } = past.forecast;
  const context = contextOf(past.forecast.context);
  const appraisal = appraiseMoney(facts, context.setup, context.history, context.spreadOf);
  const deal = dealOf(facts, context, appraisal);
  const price = past.happened.hammer;
  if (!deal.ok || price === null) return undefined;
  return { deal: deal.value, appraisal, price, titled: dealTotals(deal.value).titled };
}

/**
 * Estimate, price paid and outcome as hammer prices: what would have been left at the price paid, added to it. Bills that
 * have not come count as expected.
 */
export function winCase(lot: TimedLot, plainOf: ContextOf, othersOf: ContextOf): readonly WinCase[] {
  const { known } = lot;
  const profit = profitUnder(lot, plainOf);
  const others = dealUnder(lot, othersOf);
  if (known.sold === undefined || profit === undefined || others === undefined) return [];
  const { price } = others;
  const expected = breakdownAt(others.deal, price);
  const estimate = price + expected.profit;
  const realised = price + profit;
  const stop = estimate - expected.required;
  if (Math.min(estimate, realised, stop, price) <= 0) return [];
  const at = instant(Math.max(known.sold, known.billed ?? 0));
  return [{ at, on: known.soldOn ?? at, estimate, paid: price, realised, stop }];
}

/**
 * What a won lot really left, cents: its forecast with every part that is known put right. Bills that have not come count
 * as expected.
 * @returns null while it is not sold; of a canceled purchase, less what did not come back
 */
export function actualProfit(lot: TimedLot): Cents | null {
  const { bought, canceled } = lot.past.happened;
  if (canceled) return bought === null || bought.lost === null ? null : cents(-bought.lost);
  const profit = profitUnder(lot, (context) => context);
  return profit === undefined ? null : cents(profit);
}

/** The same by another context; undefined where it has not sold, or has no forecast. */
function profitUnder(lot: TimedLot, contextOf: ContextOf): number | undefined {
  const { bought, canceled } = lot.past.happened;
  const under = dealUnder(lot, contextOf);
  if (!bought?.sale || canceled || under === undefined) return undefined;
  const { deal, price, titled } = under;
  const { profit, allIn } = breakdownAt(deal, price);
  const { recon } = dealTotals(deal);
  // A haircut is no bill: it was taken off for what the parts below turned out to be.
  const haircut = deal.costs.reduce((sum, { kind, cents: off }) => (kind === 'haircut-cost' ? sum + off : sum), 0);
  const overAllIn = bought.allIn === null ? 0 : bought.allIn - allIn;
  return profit + haircut + (bought.sale.cents - titled) - ((bought.recon ?? recon) - recon) - overAllIn;
}
