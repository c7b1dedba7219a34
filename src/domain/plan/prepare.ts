import { attempt } from '../attempt.ts';
import { ENOUGH_CLOSINGS, type Market } from '../market/market.ts';
import type { TimedLot } from './closing-order.ts';
import type { PlanReason } from './plan.ts';
import type { PlanLot } from './plan-lot.ts';
import { chancesOf, pricePoints } from './price-points.ts';
import type { Bidding } from './stage.ts';

/** A lot of the plan, with what the recursion needs of it or why it takes no part. */
export interface Prepared {
  readonly lot: TimedLot;
  readonly closings: number;
  /** Absent where no bid is possible. */
  readonly bidding?: Bidding;
  readonly out?: PlanReason;
}

/** Makes a lot ready for the recursion. A mistake in one lot costs only itself. */
export function prepare(lot: TimedLot, market: Market): Prepared {
  const closings = market.closingsOf(lot.group);
  const made = attempt(() => biddingOf(lot, market, closings));
  if (!made.ok) return { lot, closings, out: { is: 'cant-work-out', message: made.message } };
  return 'is' in made.value ? { lot, closings, out: made.value } : { lot, closings, bidding: made.value };
}

function biddingOf(lot: PlanLot, market: Market, closings: number): Bidding | PlanReason {
  const { choice, maxBid, proxy } = lot;
  if (choice === 'skipped' && proxy === undefined) return { is: 'skipped' };
  if (maxBid === null && proxy === undefined) return { is: 'no-max-bid' };
  if (!(lot.zeroProfit > 0)) return { is: 'cant-work-out', message: NOTHING_TO_COMPARE };
  const points = pricePoints(lot, market.curveOf(lot.group));
  if (points === undefined) return { is: 'price-passed' };
  const enough = closings >= ENOUGH_CLOSINGS;
  const last = points.prices.length - 1;
  const pinned = choice === 'pinned' && maxBid !== null;
  return {
    points,
    rule: choice === 'plan-ignored' || !enough ? 'max' : lot.sealed ? 'sealed' : 'best',
    bound: pinned ? last : boundBy(points.prices, proxy),
    byLevel: market.levels().map(({ curveOf }) => chancesOf(lot, curveOf(lot.group), points.prices)),
  };
}

const NOTHING_TO_COMPARE =
  'It would lose money at any price, so its rivals can’t be compared with others. Check its retail estimate and costs.';

/** The first price at or above the proxy: no less than the proxy could cost is held for it. */
export function boundBy(prices: readonly number[], proxy: number | undefined): number {
  if (proxy === undefined) return -1;
  const at = prices.findIndex((price) => price >= proxy);
  return at < 0 ? prices.length - 1 : at;
}

/** The same lots as if prices ran higher by `by` (0.05 is 5%), or with the curve of another level. */
export function shifted(
  prepared: readonly Prepared[],
  curves: Pick<Market, 'curveOf'>,
  by: number,
): readonly Prepared[] {
  return prepared.map((each) => {
    if (each.bidding === undefined) return each;
    const { below } = curves.curveOf(each.lot.group);
    const points = {
      ...each.bidding.points,
      chance: chancesOf(each.lot, { below: (x) => below(x - by) }, each.bidding.points.prices),
    };
    return { ...each, bidding: { ...each.bidding, points } };
  });
}
