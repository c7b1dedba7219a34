import { appraiseMoney, type MoneyAppraisal, riskCapOf } from '../appraisal/appraise.ts';
import { attempt } from '../attempt.ts';
import type { Deal } from '../deal/deal.ts';
import { goOnTo } from '../deal/go-on-to.ts';
import { type MaxBid, maxBidOnly } from '../deal/max-bid.ts';
import type { LotFacts } from '../lot/lot.ts';
import { type Cents, cents } from '../money/cents.ts';
import { type Outcome, ok } from '../outcome.ts';
import { nextPrice } from '../price/price-grid.ts';
import { type Assumption, assumptionsOf } from './assumptions.ts';
import { type Uncorrected, uncorrectedAt } from './correction-steps.ts';
import { type DealRefusal, dealOf, incomplete, notMeantOf } from './deal-of.ts';
import type { PricingContext } from './pricing-context.ts';
import { stopAt, stopOnly } from './stop-at.ts';

/** A lot's whole worksheet. */
export interface Worksheet {
  readonly deal: Deal;
  readonly result: MaxBid;
  /** Max bid less the price now; negative once the price is past it. Null when nothing pays or no price is known. */
  readonly headroom: Cents | null;
  /**
   * How far one may still go from the price now: the end of the accepted interval that holds the next bid. Differs from
   * the max bid only past a hole. Null when the next bid does not pay, or no price is known.
   */
  readonly goOn: Cents | null;
  readonly assumptions: readonly Assumption[];
  /** Retail, doubts and risk, as the deal took them. */
  readonly appraisal: MoneyAppraisal;
  /** The same without the corrections that are switched on, and what each takes off; absent while none is. */
  readonly uncorrected?: Uncorrected;
  /** The price to stop at for a what-if of this deal, by the same rules. */
  readonly stopOf: (deal: Deal) => Cents | null;
}

/**
 * From a lot's facts to its max bid with everything that explains it, or to the list of what is missing. Every screen,
 * alert and export asks here, so that all of them show the same number.
 * @param appraisal takes the place of the one that follows from the facts
 */
export function worksheetOf(
  facts: LotFacts,
  context: PricingContext,
  appraisal?: MoneyAppraisal,
): Outcome<Worksheet, DealRefusal> {
  return orWhyNot(facts, () => worked(facts, context, appraisal ?? appraised(facts, context)));
}

function worked(facts: LotFacts, context: PricingContext, appraisal: MoneyAppraisal): Outcome<Worksheet, DealRefusal> {
  const outcome = dealOf(facts, context, appraisal);
  if (!outcome.ok) return outcome;
  const deal = outcome.value;
  const { priceNow } = facts;
  const rules = { riskCapOf: riskCapOf(appraisal, context.setup), sealed: facts.sealed };
  const result = stopAt(deal, rules, priceNow);
  const uncorrected = uncorrectedAt(facts, context, result.breakdown.price);
  return ok({
    deal,
    result,
    headroom: headroomOf(result.maxBid, priceNow),
    goOn: priceNow === undefined ? null : goOnTo(result, nextPrice(deal.increments, priceNow)),
    assumptions: assumptionsOf(facts, context, appraisal.retail?.grid?.comps),
    appraisal,
    ...(uncorrected && { uncorrected }),
    stopOf: (changed) => stopOnly(changed, rules),
  });
}

/** The two numbers that a list shows, without the explanation. */
export interface Standing {
  readonly maxBid: Cents | null;
  readonly headroom: Cents | null;
}

/** The same max bid as {@link worksheetOf} gives, without the explanation: for lists of thousands of lots. */
export function standingOf(facts: LotFacts, context: PricingContext): Outcome<Standing, DealRefusal> {
  return orWhyNot(facts, () => standing(facts, context, true));
}

/**
 * The standing by the profit rule alone, the cap on the chance of a loss left out: thirty times quicker and mostly the
 * same. Only for putting lots that are out of sight in a first order; never a number to show.
 */
export function uncappedStandingOf(facts: LotFacts, context: PricingContext): Outcome<Standing, DealRefusal> {
  return orWhyNot(facts, () => standing(facts, context, false));
}

/**
 * The boundary at which a mistake of ours in one lot becomes a refusal of that lot alone: it keeps its close and its
 * reminders, and the lots around it their figures.
 */
export function orWhyNot<Value>(facts: LotFacts, work: () => Outcome<Value, DealRefusal>): Outcome<Value, DealRefusal> {
  const outcome = attempt(work);
  if (outcome.ok) return outcome.value;
  // A figure that nobody can have meant is the better reason, where it is one.
  const absurd = attempt(() => notMeantOf(facts));
  if (absurd.ok && absurd.value.length > 0) return incomplete(absurd.value);
  const { reason, message, short } = outcome;
  return incomplete([{ reason, message, short }]);
}

const appraised = (facts: LotFacts, { setup, history, spreadOf }: PricingContext): MoneyAppraisal =>
  appraiseMoney(facts, setup, history, spreadOf);

function standing(facts: LotFacts, context: PricingContext, capped: boolean): Outcome<Standing, DealRefusal> {
  const appraisal = appraised(facts, context);
  const deal = dealOf(facts, context, appraisal);
  if (!deal.ok) return deal;
  const most = capped
    ? stopOnly(deal.value, { riskCapOf: riskCapOf(appraisal, context.setup), sealed: facts.sealed })
    : maxBidOnly(deal.value);
  return ok({ maxBid: most, headroom: headroomOf(most, facts.priceNow) });
}

function headroomOf(most: Cents | null, priceNow: Cents | undefined): Cents | null {
  return most === null || priceNow === undefined ? null : cents(most - priceNow);
}
