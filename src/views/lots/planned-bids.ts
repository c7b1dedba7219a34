import type { LotId } from '../../domain/lot/lot.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { LotState } from '../../folds/lot-state.ts';

/** What the plan says of a lot. */
export interface Planned {
  /** Null where it leaves the lot out. */
  readonly bid: Cents | null;
  /** The chance that this bid wins, in millionths; absent where too few closings stand behind one. */
  readonly chance?: number;
}

/**
 * What the plan bids on each lot that it knows. A lot that the plan says nothing about is
 * not in it, and is bid on as if there were no plan.
 */
export type PlannedBids = ReadonlyMap<LotId, Planned>;

export const NO_PLAN: PlannedBids = new Map();

/** What the plan bids on a lot; what the user said about it since the plan was made holds at once. */
export function plannedFor(planned: PlannedBids, { id, planChoice }: LotState): Planned | undefined {
  const said = planChoice === 'plan-ignored' ? undefined : planned.get(id);
  return said !== undefined && planChoice === 'skipped' ? LEFT_OUT : said;
}

const LEFT_OUT: Planned = { bid: null };
