import type { LotId } from '../../domain/lot/lot.ts';
import { PPM } from '../../domain/money/rate.ts';
import type { Plan, PlanReason, PlanRow } from '../../domain/plan/plan.ts';
import type { PlanChange } from '../../domain/plan/plan-changes.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { NO_PLAN, type Planned, type PlannedBids } from '../lots/planned-bids.ts';
import type { KeptClosing } from './closings-of.ts';
import type { PurseView } from './purse-of.ts';

/** Raised with every change of what a kept plan holds: an older one is made anew. */
export const PLAN_VERSION = 3;

/** A plan as this browser keeps it, until it makes the next. It follows from the journal, so it is in no backup. */
export interface KeptPlan {
  readonly version: number;
  readonly madeAt: Instant;
  /** What it was made from; see the store. */
  readonly basis: string;
  /** What it says of each lot that it speaks about. */
  readonly bids: readonly (readonly [LotId, Planned])[];
  /** What was planned last for lots that have closed since and whose result nobody noted yet: it is kept with the result. */
  readonly atClose: readonly (readonly [LotId, Planned])[];
  readonly plan: Plan;
  readonly purse: PurseView;
  /** What the last plan that differed said otherwise; null for the first plan. */
  readonly changed: PlanChanged | null;
  /** How high prices run this weekend: 0.03 is 3% above the usual, with the closings behind it. */
  readonly level: { readonly mean: number; readonly sd: number; readonly closings: number };
  readonly closings: readonly KeptClosing[];
}

export interface PlanChanged {
  readonly at: Instant;
  /** What happened before it, a sentence each. */
  readonly because: readonly string[];
  readonly changes: readonly PlanChange[];
}

/** The planned bids of a kept plan, and those of lots that have just closed; none without one. */
export const plannedBids = (plan: KeptPlan | null | undefined): PlannedBids =>
  plan ? new Map([...plan.atClose, ...plan.bids]) : NO_PLAN;

/** Of these lots the plan says nothing of its own. */
const SILENT: ReadonlySet<PlanReason['is']> = new Set([
  'no-max-bid',
  'no-close',
  'closed',
  'after-purse',
  'plan-ignored',
  'price-passed',
  'cant-work-out',
]);

/** What the plan would bid if nothing were in yet: a proxy above it is over plan. Undefined where the plan says nothing. */
export function plannedOf({ reason, withoutProxy, plannedBid, chance }: PlanRow): Planned | undefined {
  if (SILENT.has(reason.is)) return undefined;
  if (withoutProxy !== undefined && withoutProxy !== plannedBid) return { bid: withoutProxy };
  const known = plannedBid !== null && chance !== null;
  return { bid: plannedBid, ...(known && { chance: Math.round(chance.chance * PPM) }) };
}
