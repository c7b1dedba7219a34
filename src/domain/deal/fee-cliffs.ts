import { feeEdges } from '../fees/fee-edges.ts';
import { totalFees } from '../fees/fees-at.ts';
import type { Cents } from '../money/cents.ts';
import type { PriceGrid } from '../price/price-grid.ts';
import type { Deal } from './deal.ts';

/** A step of the price at which a fee jumps: "the step from $9,975 to $10,000 costs $25 + $75 fee". */
export interface FeeCliff {
  /** The price at which the band changes. */
  readonly edge: Cents;
  /** The last price of the grid below the edge, and the first at or above it. */
  readonly before: Cents;
  readonly at: Cents;
  /** `at − before`. */
  readonly step: Cents;
  /** What the fees rise by over this step; negative where they fall. */
  readonly extraFee: Cents;
}

/** The jumps of the fees over steps of the grid that end above `low` and start at or below `high`, in order. */
export function feeCliffs(deal: Deal, grid: PriceGrid, low: Cents, high: Cents): readonly FeeCliff[] {
  const cliffs: FeeCliff[] = [];
  for (const { price: edge, jump } of feeEdges(deal.fees)) {
    const index = grid.indexFrom(edge);
    if (jump === 0 || index === 0 || index >= grid.size) continue;
    const at = grid.priceAt(index);
    const before = grid.priceAt(index - 1);
    // Two edges inside one step are one cliff: the buyer only ever sees the step.
    if (at <= low || before > high || cliffs.at(-1)?.at === at) continue;
    const extraFee = totalFees(at, deal.fees) - totalFees(before, deal.fees);
    cliffs.push({ edge, before, at, step: (at - before) as Cents, extraFee: extraFee as Cents });
  }
  return cliffs;
}
