import type { Instant } from '../domain/time/instant.ts';
import type { Zone } from '../domain/time/zone.ts';
import type { Store } from '../store/store.ts';
import type { KeptPlan } from '../views/plan/kept-plan.ts';
import { makePlan } from '../views/plan/make-plan.ts';
import type { PlanJob } from './plan-apart.ts';

interface PlanWorld {
  readonly now: () => Instant;
  readonly zone: () => Zone;
  readonly openStore: () => Promise<{ readonly ok: true; readonly value: Store } | { readonly ok: false }>;
  readonly after: (ms: number, then: () => void) => () => void;
  readonly report: (error: unknown) => void;
  /** Makes it on a thread of its own, where this one is shared with pages. */
  readonly planApart?: ((job: PlanJob) => Promise<boolean>) | undefined;
  /** Name of the store, where it is not the dealer's own. */
  readonly storeName?: string;
}

/** Changes often come several at a time, and reminders come first. */
const CALM_MS = 2_000;
/** As long as others wait for their turn. */
const SLICE_MS = 12;

/**
 * Sees to it that the plan is of now: made anew after a result, a price, a purse or a setup that changed, and after a close
 * that passed. Does nothing while the one that is kept still holds. A worker that dies meanwhile has kept nothing, so the
 * next look finds it to be done.
 * @returns whether the bids changed
 */
export async function seeToPlan(store: Store, world: Pick<PlanWorld, 'now' | 'zone'>): Promise<boolean> {
  const now = world.now();
  const kept = await store.plan();
  if (!isDue(kept, now)) return false;
  const inputs = await store.planInputs();
  const before = kept?.plan ?? null;
  if (inputs.setup?.purse === undefined) {
    if (before !== null) await store.keepPlan(null);
    return before !== null;
  }
  const plan = await makePlan(inputs, { now, zone: world.zone(), before, entriesOf: store.entriesOf, pause: pauses() });
  await store.keepPlan(plan);
  return JSON.stringify(plan?.bids) !== JSON.stringify(before?.bids);
}

/** Whether what is kept does not hold any more. */
const isDue = (kept: Awaited<ReturnType<Store['plan']>>, now: Instant): boolean =>
  kept?.holds !== true || isPassed(kept.plan, now);

/** Whether a lot of the plan has closed since it was made, or its purse has ended: both free what was held. */
function isPassed({ plan, purse, madeAt }: KeptPlan, now: Instant): boolean {
  const closed = plan.rows.some(({ close }) => close !== null && close > madeAt && close <= now);
  const ended = purse.purse.until !== undefined && purse.purse.until > madeAt && purse.purse.until <= now;
  return closed || ended || madeAt > now;
}

async function seeIn(store: Store, { planApart, storeName, ...world }: PlanWorld): Promise<boolean> {
  if (planApart === undefined) return seeToPlan(store, world);
  const now = world.now();
  const [kept, setup] = await Promise.all([store.plan(), store.purse()]);
  // A thread is started only where there is something to do.
  if (!isDue(kept, now) || (setup === null && kept === null)) return false;
  return planApart({ now, zone: world.zone(), ...(storeName !== undefined && { store: storeName }) });
}

function pauses(): () => Promise<void> {
  let until = Date.now() + SLICE_MS;
  return async () => {
    if (Date.now() < until) return;
    await new Promise((resolve) => setTimeout(resolve));
    until = Date.now() + SLICE_MS;
  };
}

/**
 * Gives what to call after each look into the store: some calm moments later the plan is seen to, one at a time.
 * @param onChanged called when bids changed, so that a proxy that is over plan now is said
 */
export function planKeeper(world: PlanWorld, onChanged: () => void): () => void {
  let callOff: () => void = () => undefined;
  let queue: Promise<void> = Promise.resolve();
  const see = async () => {
    const opened = await world.openStore();
    if (!opened.ok) return;
    const changed = await seeIn(opened.value, world).finally(() => opened.value.close());
    if (changed) onChanged();
  };
  return () => {
    callOff();
    callOff = world.after(CALM_MS, () => {
      queue = queue.then(see).catch(world.report);
    });
  };
}
