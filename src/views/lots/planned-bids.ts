import type { LotId } from '../../domain/lot/lot.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { LotState } from '../../folds/lot-state.ts';

/**
 * What the plan bids on each lot that it knows: null where it leaves the lot out. A lot that the plan says nothing about is
 * not in it, and is bid on as if there were no plan.
 */
export type PlannedBids = ReadonlyMap<LotId, Cents | null>;

export const NO_PLAN: PlannedBids = new Map();

/** What the plan bids on a lot; what the user said about it since the plan was made holds at once. */
export function plannedFor(planned: PlannedBids, { id, planChoice }: LotState): Cents | null | undefined {
  if (!planned.has(id) || planChoice === 'plan-ignored') return undefined;
  return planChoice === 'skipped' ? null : planned.get(id);
}
