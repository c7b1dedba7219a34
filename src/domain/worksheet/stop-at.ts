import type { Deal } from '../deal/deal.ts';
import { type MaxBid, maxBid, maxBidOnly } from '../deal/max-bid.ts';
import { breakdownOf } from '../deal/price-breakdown.ts';
import { type DealTotals, dealTotals, sumsAt } from '../deal/price-sums.ts';
import { feeDrops } from '../fees/fee-edges.ts';
import type { LotFacts } from '../lot/lot.ts';
import type { Cents } from '../money/cents.ts';
import type { Accepts } from '../price/accepted-intervals.ts';
import { type PriceGrid, priceGrid } from '../price/price-grid.ts';
import { sealedBid } from '../risk/sealed-bid.ts';
import { beatsRival } from '../risk/sealed-sale.ts';

/** What decides where to stop beyond the deal itself. */
export interface StopRules {
  readonly riskCapOf: (deal: Deal) => Accepts | undefined;
  readonly sealed: LotFacts['sealed'];
}

/** The price to stop at: the max bid, or at a sealed sale the bid to hand in. */
export function stopOnly(deal: Deal, { riskCapOf, sealed }: StopRules): Cents | null {
  const most = maxBidOnly(deal, { riskCap: riskCapOf(deal) });
  return most === null ? null : (sealedStop(dealTotals(deal), most, sealed) ?? most);
}

/** The same with everything that explains it. */
export function stopAt(deal: Deal, { riskCapOf, sealed }: StopRules, priceNow: Cents | undefined): MaxBid {
  const result = maxBid(deal, { riskCap: riskCapOf(deal), priceNow });
  if (result.maxBid === null) return result;
  const totals = dealTotals(deal);
  const bid = sealedStop(totals, result.maxBid, sealed);
  if (bid === undefined) return result;
  return { ...result, maxBid: bid, limitedBy: 'sealed', breakdown: breakdownOf(totals, bid) };
}

/**
 * Where nobody's bid is seen, the price paid is one's own bid, so a bid up to the last price that pays would win
 * nothing worth having. What is left at a price never counts for more than at a lower one: a fee that falls further up
 * must not pull the bid there, nor may a higher cost ever raise it.
 * @returns undefined at an open sale, while nothing is known of the other bids, or when no price leaves anything
 */
function sealedStop(totals: DealTotals, most: Cents, sealed: LotFacts['sealed']): Cents | undefined {
  if (sealed?.rival === undefined) return undefined;
  const grid = priceGrid(totals.deal.increments, most);
  return sealedBid(grid, beatsRival(sealed.rival), leftUpTo(totals, grid))?.bid;
}

/** The least that is left at any price of the grid up to the one asked about: it can only rise where a fee falls. */
function leftUpTo(totals: DealTotals, grid: PriceGrid): (price: Cents) => number {
  const slackAt = (price: Cents) => sumsAt(totals, price).slack;
  const before = feeDrops(totals.deal.fees).flatMap((drop) => {
    const index = grid.indexFrom(drop);
    return index === 0 || index >= grid.size ? [] : [{ drop, left: slackAt(grid.priceAt(index - 1)) }];
  });
  return (price) =>
    before.reduce((least, { drop, left }) => (drop <= price ? Math.min(least, left) : least), slackAt(price));
}
