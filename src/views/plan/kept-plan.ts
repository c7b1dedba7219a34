import type { LotId } from '../../domain/lot/lot.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { NO_PLAN, type PlannedBids } from '../lots/planned-bids.ts';

/** Raised with every change of what a kept plan holds: an older one is made anew. */
export const PLAN_VERSION = 1;

/** A plan as this browser keeps it, until it makes the next. It follows from the journal, so it is in no backup. */
export interface KeptPlan {
  readonly version: number;
  readonly madeAt: Instant;
  /** What it was made from; see the store. */
  readonly basis: string;
  /** The planned bid of each lot that the plan speaks about; null where it leaves the lot out. */
  readonly bids: readonly (readonly [LotId, Cents | null])[];
}

/** The planned bids of a kept plan; none without one. */
export const plannedBids = (plan: KeptPlan | null | undefined): PlannedBids => (plan ? new Map(plan.bids) : NO_PLAN);
