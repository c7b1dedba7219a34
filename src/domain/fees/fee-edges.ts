import type { Cents } from '../money/cents.ts';
import type { FeeTable } from './fee-schedule.ts';
import { bandFee } from './fees-at.ts';

/** A price at which some fee table changes its band. */
export interface FeeEdge {
  /** The first price of the upper band. */
  readonly price: Cents;
  /**
   * What the change of band alone adds to the fees at this very price, all tables together: the upper band's fee less
   * what the lower band would have charged. Negative where the fee falls, 0 where the bands join smoothly.
   */
  readonly jump: number;
}

/** Every price above 0 at which a band starts, in order, with the jump of the fees there. */
export function feeEdges(tables: readonly FeeTable[]): readonly FeeEdge[] {
  const jumps = new Map<Cents, number>();
  for (const { bands, rounding } of tables) {
    for (const [i, upper] of bands.entries()) {
      const lower = bands[i - 1];
      if (lower === undefined) continue;
      const edge = upper.fromCents;
      const jump = bandFee(upper, edge, rounding) - bandFee(lower, edge, rounding);
      jumps.set(edge, (jumps.get(edge) ?? 0) + jump);
    }
  }
  return [...jumps].map(([price, jump]) => ({ price, jump })).sort((a, b) => a.price - b.price);
}

/**
 * The prices at which some table charges less than it did one cent below, in order. Between two of them no fee ever
 * falls as the price rises, which is what a search by halving rests on.
 */
export function feeDrops(tables: readonly FeeTable[]): readonly Cents[] {
  const drops = new Set<Cents>();
  for (const { bands, rounding } of tables) {
    for (let i = 1; i < bands.length; i++) {
      const lower = bands[i - 1];
      const upper = bands[i];
      if (lower === undefined || upper === undefined) continue;
      const edge = upper.fromCents;
      if (bandFee(upper, edge, rounding) < bandFee(lower, edge - 1, rounding)) drops.add(edge);
    }
  }
  return [...drops].sort((a, b) => a - b);
}
