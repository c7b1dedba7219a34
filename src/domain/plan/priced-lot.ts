import { appraiseMoney, riskCapOf } from '../appraisal/appraise.ts';
import type { Deal } from '../deal/deal.ts';
import { type DealTotals, dealTotals, sumsAt } from '../deal/price-sums.ts';
import type { LotFacts } from '../lot/lot.ts';
import { type Cents, cents } from '../money/cents.ts';
import { type Outcome, ok } from '../outcome.ts';
import { type DealRefusal, dealOf } from '../worksheet/deal-of.ts';
import type { PricingContext } from '../worksheet/pricing-context.ts';
import { stopOnly } from '../worksheet/stop-at.ts';
import { orWhyNot } from '../worksheet/worksheet-of.ts';
import type { PayWay, PlanLot } from './plan-lot.ts';

/** What the plan needs of a lot's worksheet. */
export type PricedLot = Pick<PlanLot, 'maxBid' | 'increments' | 'zeroProfit' | 'waysAt'>;

/**
 * A lot as its worksheet prices it: its max bid, the price at which it would earn nothing, and the ways to pay for it. A car
 * that the lender takes can be paid for from own cash as well, where that is what is left.
 */
export function pricedLot(facts: LotFacts, context: PricingContext): Outcome<PricedLot, DealRefusal> {
  return orWhyNot(facts, () => {
    const { setup, history, spreadOf } = context;
    const appraisal = appraiseMoney(facts, setup, history, spreadOf);
    const deal = dealOf(facts, context, appraisal);
    if (!deal.ok) return deal;
    const own = deal.value.funding.kind === 'cash' ? null : dealOf({ ...facts, funding: 'cash' }, context, appraisal);
    // A lender asks for the title before he pays, so a car whose title nobody has stated is planned from own cash.
    const line = facts.titleId === undefined && own?.ok ? [] : [deal.value];
    const ways = [...line, ...(own?.ok ? [own.value] : [])].map(dealTotals);
    return ok({
      maxBid: stopOnly(deal.value, { riskCapOf: riskCapOf(appraisal, setup), sealed: facts.sealed }),
      increments: deal.value.increments,
      zeroProfit: zeroProfitOf(deal.value),
      waysAt: (price) => ways.map((totals) => wayAt(totals, price)),
    });
  });
}

/** The price at which a lot would have earned nothing, by what was known of it. */
export function zeroProfitAt(facts: LotFacts, context: PricingContext): Outcome<Cents, DealRefusal> {
  return orWhyNot(facts, () => {
    const { setup, history, spreadOf } = context;
    const deal = dealOf(facts, context, appraiseMoney(facts, setup, history, spreadOf));
    return deal.ok ? ok(zeroProfitOf(deal.value)) : deal;
  });
}

function wayAt(totals: DealTotals, price: Cents): PayWay {
  const { cash, financed, profit } = sumsAt(totals, price);
  return { pool: totals.deal.funding.kind === 'floor' ? 'line' : 'cash', cash, line: financed, profit };
}

/**
 * The highest price at which the expected profit is 0 or more, to the cent, found by halving; where a fee falls it may be one
 * of several. 1 cent where even a car for nothing would lose money, so that prices can still be compared with it.
 */
function zeroProfitOf(deal: Deal): Cents {
  const totals = dealTotals(deal);
  let [low, high] = [0, Math.max(1, totals.titled)];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (sumsAt(totals, middle).profit >= 0) low = middle;
    else high = middle;
  }
  return cents(Math.max(1, low));
}
