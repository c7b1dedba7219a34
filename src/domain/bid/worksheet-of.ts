import type { LotFacts } from '../lot/lot.ts';
import { type Cents, cents } from '../money/cents.ts';
import { type Outcome, ok } from '../outcome.ts';
import type { Appraisal } from './appraisal.ts';
import { type Assumption, assumptionsOf } from './assumptions.ts';
import type { Deal } from './deal.ts';
import { type DealRefusal, dealOf } from './deal-of.ts';
import { goOnTo } from './go-on-to.ts';
import { type MaxBid, type MaxBidOptions, maxBid, maxBidOnly } from './max-bid.ts';
import { nextPrice } from './price-grid.ts';
import type { PricingContext } from './pricing-context.ts';

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
}

export interface WorksheetOptions {
  readonly appraisal?: Appraisal;
  /** The risk cap of this deal, where there is one. */
  readonly riskCapOf?: (deal: Deal) => MaxBidOptions['riskCap'];
}

/** From a lot's facts to its max bid with everything that explains it, or to the list of what is missing. */
export function worksheetOf(
  facts: LotFacts,
  context: PricingContext,
  options: WorksheetOptions = {},
): Outcome<Worksheet, DealRefusal> {
  const deal = dealOf(facts, context, options.appraisal);
  if (!deal.ok) return deal;
  const { priceNow } = facts;
  const riskCap = options.riskCapOf?.(deal.value);
  const result = maxBid(deal.value, { ...(riskCap && { riskCap }), ...(priceNow !== undefined && { priceNow }) });
  return ok({
    deal: deal.value,
    result,
    headroom: headroomOf(result.maxBid, priceNow),
    goOn: priceNow === undefined ? null : goOnTo(result, nextPrice(deal.value.increments, priceNow)),
    assumptions: assumptionsOf(facts, context),
  });
}

/** The two numbers that a list shows, without the explanation. */
export interface Standing {
  readonly maxBid: Cents | null;
  readonly headroom: Cents | null;
}

/** The same max bid as {@link worksheetOf} gives, several times faster: for lists of thousands of lots. */
export function standingOf(
  facts: LotFacts,
  context: PricingContext,
  options: WorksheetOptions = {},
): Outcome<Standing, DealRefusal> {
  const deal = dealOf(facts, context, options.appraisal);
  if (!deal.ok) return deal;
  const riskCap = options.riskCapOf?.(deal.value);
  const most = maxBidOnly(deal.value, riskCap && { riskCap });
  return ok({ maxBid: most, headroom: headroomOf(most, facts.priceNow) });
}

function headroomOf(most: Cents | null, priceNow: Cents | undefined): Cents | null {
  return most === null || priceNow === undefined ? null : cents(most - priceNow);
}
