import { feeDrops } from '../fees/fee-edges.ts';
import { type Cents, ZERO } from '../money/cents.ts';
import { type AcceptedInterval, type Accepts, acceptedIntervals } from '../price/accepted-intervals.ts';
import { nextPrice, type PriceGrid, priceGrid } from '../price/price-grid.ts';
import type { Deal } from './deal.ts';
import { type FeeCliff, feeCliffs } from './fee-cliffs.ts';
import { breakdownOf, type PriceBreakdown } from './price-breakdown.ts';
import { type DealTotals, dealTotals, type ProfitRuleKey, sumsAt } from './price-sums.ts';

/** What stops the price from going one step higher; with no max bid, what refuses the lowest price. */
export type LimitedBy = ProfitRuleKey | 'loss-chance' | 'sealed' | 'nothing-pays';

/** What a max bid is asked with beyond the deal itself. */
export interface MaxBidOptions {
  /**
   * A second rule that must accept too, such as "the chance of losing money is at most so much". Between fee drops it
   * must accept a prefix of the prices, as anything does that only gets worse with the cost of the car.
   */
  readonly riskCap?: Accepts | undefined;
  /** The current bid; only decides which fee cliffs are worth showing. */
  readonly priceNow?: Cents | undefined;
}

export interface MaxBid {
  /**
   * What to enter as a proxy: the end of the first interval of accepted prices, so that every price up to it that the
   * sale can land on pays. Null when not even the lowest price pays. 0 when the car is only worth having free.
   */
  readonly maxBid: Cents | null;
  readonly limitedBy: LimitedBy;
  /** Every accepted price; more than one interval where a fee falls as the price rises. */
  readonly accepted: readonly AcceptedInterval[];
  /** The accepted intervals above the max bid: if the price has already passed into one, one may go on to its end. */
  readonly reEntries: readonly AcceptedInterval[];
  /** Fee jumps between the price now (or a fifth below the max bid) and a tenth above the highest accepted price. */
  readonly cliffs: readonly FeeCliff[];
  /** The deal at the max bid; at a price of 0 when nothing pays, to show what is short. */
  readonly breakdown: PriceBreakdown;
}

/**
 * The most that may be paid, exactly, on the sale's own steps.
 *
 * Prices above the retail that the title leaves are not searched: there the hammer alone eats what the car will bring,
 * costs, fees and least profits are 0 or more, and so at most nothing is left. (With a chance of one in two or more
 * that the sale comes undone, a loss that is mostly handed back could round to nothing; such prices are not accepted.)
 */
export function maxBid(deal: Deal, options: MaxBidOptions = {}): MaxBid {
  const totals = dealTotals(deal);
  const grid = gridOf(totals);
  const accepted = acceptedIntervals(grid, feeDrops(deal.fees), rulesOf(totals, options.riskCap));
  const most = safeEnd(accepted);
  const lowest = options.priceNow ?? Math.floor((most ?? 0) * 0.8);
  const highest = Math.floor((accepted.at(-1)?.high ?? 0) * 1.1);
  return {
    maxBid: most,
    limitedBy: most === null ? whyNone(totals) : limitOf(totals, most),
    accepted,
    reEntries: most === null ? accepted : accepted.slice(1),
    cliffs: feeCliffs(deal, grid, lowest as Cents, highest as Cents),
    breakdown: breakdownOf(totals, most ?? ZERO),
  };
}

/** The number alone, for long lists. */
export function maxBidOnly(deal: Deal, { riskCap }: Pick<MaxBidOptions, 'riskCap'> = {}): Cents | null {
  const totals = dealTotals(deal);
  return safeEnd(acceptedIntervals(gridOf(totals), feeDrops(deal.fees), rulesOf(totals, riskCap), true));
}

/**
 * The end of the first interval, if that starts at the bottom. A proxy may be made to pay any price below it, so where
 * a high fee makes the lowest prices dearer than the ones above, no proxy is safe; one may still go on to an interval
 * once the price has reached it. It is also what keeps a higher cost from ever giving a higher max bid.
 */
function safeEnd(accepted: readonly AcceptedInterval[]): Cents | null {
  const first = accepted[0];
  return first?.low === 0 ? first.high : null;
}

function gridOf({ deal, titled }: DealTotals): PriceGrid {
  return priceGrid(deal.increments, titled);
}

function rulesOf(totals: DealTotals, riskCap: Accepts | undefined): readonly Accepts[] {
  const pays: Accepts = (price) => sumsAt(totals, price).slack >= 0;
  return riskCap === undefined ? [pays] : [pays, riskCap];
}

/** Even free the car does not pay, or it would, and the risk cap alone refuses it. */
const whyNone = (totals: DealTotals): LimitedBy => (sumsAt(totals, 0).slack < 0 ? 'nothing-pays' : 'loss-chance');

/** Why the next price after `stop` is refused. The profit rule goes first: the risk cap is named only where it alone refuses. */
function limitOf(totals: DealTotals, stop: Cents): LimitedBy {
  const next = sumsAt(totals, nextPrice(totals.deal.increments, stop));
  return next.slack < 0 || next.price > totals.titled ? next.requiredBy : 'loss-chance';
}
