import type { KeptPlan } from '../../views/plan/kept-plan.ts';
import type { ReadTransaction } from '../connection/schema.ts';

/** The kept plan as a transaction finds it. */
export async function planIn(tx: ReadTransaction, version: number): Promise<KeptPlan | null> {
  const plan = await tx.objectStore('meta').get('plan');
  return isPlan(plan) && plan.version === version ? plan : null;
}

/** What is kept under one name is of one kind; the types of the store do not say which. */
const isPlan = (kept: unknown): kept is KeptPlan => Object(kept).bids !== undefined;
