import { unwrap } from 'idb';
import { foldBooks } from '../../folds/fold-books.ts';
import { BOOKS } from '../../journal/subject.ts';
import type { KeptPlan } from '../../views/plan/kept-plan.ts';
import type { PlanInputs } from '../../views/plan/make-plan.ts';
import type { ReadTransaction, WriteTransaction } from '../connection/schema.ts';
import type { Session } from '../write/session.ts';
import { forgetFirstRows } from './first-rows.ts';
import { planIn } from './plan-in.ts';
import { known } from './refold.ts';

/** The plan as it was last made in this browser. */
export interface PlanNow {
  readonly plan: KeptPlan;
  /** Whether nothing that it was made from has changed since. */
  readonly holds: boolean;
}

/** Before the first change that anybody noted. */
const NO_BASIS = '';

/** Null while none was made, or no purse is set. Plans of another version are none. */
export function readPlan(session: Session, version: number): Promise<PlanNow | null> {
  return session.connection.read(async (tx) => {
    const [plan, basis] = await Promise.all([planIn(tx, version), basisNow(tx)]);
    return plan && { plan, holds: plan.basis === basis };
  });
}

export function readPlanInputs(session: Session): Promise<PlanInputs> {
  return session.connection.read(async (tx) => {
    const [basis, setup, lots, booked] = await Promise.all([
      basisNow(tx),
      tx.objectStore('setup').get('sections'),
      tx.objectStore('lots').getAll(),
      tx.objectStore('entries').index('subject').getAll(BOOKS),
    ]);
    return { basis, setup: setup ?? null, lots, books: foldBooks(known(booked)) };
  });
}

/** Keeps a plan, or that there is none; tells everyone. What it was made from may have changed meanwhile: then it does not hold. */
export async function keepPlan(session: Session, plan: KeptPlan | null): Promise<void> {
  await session.connection.write(async (tx) => {
    const meta = tx.objectStore('meta');
    await (plan === null ? meta.delete('plan') : meta.put(plan, 'plan'));
    // The list's first rows have planned bids in them.
    forgetFirstRows(tx);
  });
  session.feed.announce({ lots: [], setup: false, alerts: false, plan: true });
}

/** Says that what plans are made from has changed. Waits for nothing: should it fail, the whole transaction does. */
export function changePlanBasis(tx: WriteTransaction, entry: string): void {
  unwrap(tx.objectStore('meta')).put(entry, 'plan-basis');
}

/** The views are made anew, so nobody knows what a plan was made from. */
export function forgetPlan(tx: WriteTransaction): void {
  unwrap(tx.objectStore('meta')).delete('plan');
}

async function basisNow(tx: ReadTransaction): Promise<string> {
  const basis = await tx.objectStore('meta').get('plan-basis');
  return typeof basis === 'string' ? basis : NO_BASIS;
}
