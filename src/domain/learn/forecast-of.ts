import { appraiseMoney, type MoneyAppraisal } from '../appraisal/appraise.ts';
import { attempt } from '../attempt.ts';
import { expectedPurchase } from '../books/folder/expected.ts';
import { medianDays, statedBelief } from '../carrying/days-to-sell.ts';
import { sellingPath } from '../carrying/hold-factors.ts';
import type { Deal } from '../deal/deal.ts';
import { type DealTotals, dealTotals, sumsAt } from '../deal/price-sums.ts';
import type { LotFacts } from '../lot/lot.ts';
import { type Cents, cents } from '../money/cents.ts';
import { PPM } from '../money/rate.ts';
import { mulDivRound } from '../money/rounding.ts';
import { nextPrice } from '../price/price-grid.ts';
import { dealOf } from '../worksheet/deal-of.ts';
import type { PricingContext } from '../worksheet/pricing-context.ts';
import { orWhyNot, standingOf } from '../worksheet/worksheet-of.ts';
import type { DaysForecast, Forecast, PriceForecast, RetailForecast } from './forecast.ts';

/** What a forecast is made from. */
export interface ForecastSource extends Pick<Forecast, 'at' | 'late' | 'estimator' | 'facts' | 'context' | 'plan'> {
  /** Its hammer price: paid by us, or by another, who would have had to be beaten; null where it is unknown. */
  readonly hammer: { readonly cents: Cents; readonly ours: boolean } | null;
  /** The max bid as it was written down then; worked out where it was not. */
  readonly maxBid?: Cents | null | undefined;
}

/** What was believed of a lot, in figures: the worksheet of that moment, with nothing that came later. */
export function forecastOf(source: ForecastSource): Forecast {
  const { facts, context, hammer, at, late, estimator, plan } = source;
  const { setup, history, spreadOf } = context;
  const appraisal = appraiseMoney(facts, setup, history, spreadOf);
  const deal = orWhyNot(facts, () => dealOf(facts, context, appraisal));
  const price =
    hammer && (hammer.ours ? hammer.cents : deal.ok ? nextPrice(deal.value.increments, hammer.cents) : null);
  return {
    at,
    late,
    estimator,
    facts,
    context,
    appraisal,
    retail: deal.ok ? retailForecast(appraisal, deal.value) : null,
    days: daysForecast(context, appraisal.stretch),
    maxBid: source.maxBid === undefined ? maxBidOf(facts, context) : source.maxBid,
    deal: deal.ok && price !== null ? priceForecast(deal.value, price) : null,
    purchase: price === null ? null : purchaseAt(facts, context, price),
    plan,
  };
}

function maxBidOf(facts: LotFacts, context: PricingContext): Cents | null | undefined {
  const standing = standingOf(facts, context);
  return standing.ok ? standing.value.maxBid : undefined;
}

function purchaseAt(facts: LotFacts, context: PricingContext, price: Cents) {
  const purchase = attempt(() => expectedPurchase(facts, context, price));
  return purchase.ok ? purchase.value : null;
}

/** The title takes the same share of every price, so the range and the middle keep their distance in logs. */
function retailForecast({ retail }: MoneyAppraisal, { titleKeeps }: Deal): RetailForecast | null {
  if (retail === undefined) return null;
  const left = (amount: Cents): Cents => cents(mulDivRound(amount, titleKeeps, PPM, 'half-up'));
  return {
    mean: left(retail.mean),
    low: left(retail.low),
    high: left(retail.high),
    uncapped: left(retail.uncapped),
    scale: retail.scale,
    freedom: retail.freedom,
    sigma: retail.sigma,
    ...(retail.cap !== undefined && { cap: left(retail.cap) }),
    basis: retail.basis,
  };
}

/** How long a car that takes `stretch` times as long as usual was expected to stand. */
function daysForecast({ setup: { carrying }, history }: PricingContext, stretch = 1): DaysForecast {
  const { survives, horizon } = sellingPath(carrying, { history, stretch });
  const { daysToSell } = carrying;
  let expected = 0;
  for (let day = 0; day < horizon; day++) expected += survives(day);
  const median = daysToSell.kind === 'fixed' ? horizon : medianDays(statedBelief(daysToSell, history)) * stretch;
  return { median, expected, survives, horizon };
}

/** The deal at one price in the parts by which it is held against what happened. */
function priceForecast(deal: Deal, price: Cents): PriceForecast {
  const totals = dealTotals(deal);
  const sums = sumsAt(totals, price);
  const of = (...kinds: readonly string[]) => sumOf(totals, kinds);
  return {
    price,
    retail: cents(totals.titled),
    doubts: of('doubt', 'haircut-cost'),
    fees: cents(sums.fees + totals.charges),
    transport: cents(totals.transport),
    recon: cents(totals.recon),
    standing: of('pack', 'overhead', 'selling'),
    hold: cents(sums.interest + sums.cashCost + deal.funding.flatHold),
    undone: cents(sums.undone),
    allIn: cents(sums.allIn),
    financed: cents(sums.financed),
    cash: cents(sums.cash),
    funding: deal.funding.kind,
    profit: cents(sums.profit),
    required: cents(sums.required),
  };
}

const sumOf = ({ deal }: DealTotals, kinds: readonly string[]): Cents =>
  cents(deal.costs.reduce((sum, line) => (kinds.includes(line.kind) ? sum + line.cents : sum), 0));
