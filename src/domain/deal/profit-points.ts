import { feeEdges } from '../fees/fee-edges.ts';
import type { Cents } from '../money/cents.ts';
import { priceGrid } from '../price/price-grid.ts';
import type { Deal } from './deal.ts';
import { dealTotals, sumsAt } from './price-sums.ts';

/** Expected and required profit at one price of the grid. */
export interface ProfitPoint {
  readonly price: Cents;
  readonly profit: Cents;
  readonly required: Cents;
}

/**
 * The points of the profit curve from `low` to `high`: about `count` prices of the grid, and both sides of every fee
 * jump between them, so that a drawn line falls where the profit does.
 */
export function profitPoints(deal: Deal, low: Cents, high: Cents, count = 60): readonly ProfitPoint[] {
  const grid = priceGrid(deal.increments, high);
  const first = Math.min(grid.indexFrom(low), grid.size - 1);
  const last = grid.size - 1;
  const wanted = new Set<number>();
  for (let i = 0; i <= count; i++) wanted.add(Math.round(first + ((last - first) * i) / count));
  for (const { price, jump } of feeEdges(deal.fees)) {
    const index = grid.indexFrom(price);
    if (jump === 0 || index <= first || index > last) continue;
    wanted.add(index - 1).add(index);
  }
  const totals = dealTotals(deal);
  return [...wanted]
    .sort((a, b) => a - b)
    .map((index) => {
      const price = grid.priceAt(index);
      const { profit, required } = sumsAt(totals, price);
      return { price, profit: profit as Cents, required: required as Cents };
    });
}
