import type { Bid } from './bid-at.ts';
import type { PlanFault } from './plan.ts';
import type { Prepared } from './prepare.ts';
import { UNPAYABLE } from './space.ts';
import { type PlanBatch, type PlanMeans, type WorkedPlan, workPlan } from './worked-plan.ts';

/** A plan worked out: what takes part, and the bids. */
export interface Run {
  /** Every lot of the purse, batch by batch. */
  readonly prepared: readonly (readonly Prepared[])[];
  /** Lots that take part, batch by batch; batches without any are left out. */
  readonly taking: readonly (readonly Prepared[])[];
  readonly batches: readonly PlanBatch[];
  readonly bids: ReadonlyMap<Prepared, Bid>;
  readonly worked: WorkedPlan;
  readonly faults: readonly PlanFault[];
}

export function runPlan(prepared: readonly (readonly Prepared[])[], means: PlanMeans): Run {
  const first = work(prepared, means);
  if (first.worked.value > UNPAYABLE) return { ...first, prepared, faults: [] };
  // What binds us costs more than there is: then nothing binds, every bid is what the purse reaches, and it is said.
  const free = prepared.map((batch) => batch.map(unbound));
  return { ...work(free, means), prepared: free, faults: means.allowed === undefined ? [CANT_HOLD] : [] };
}

const unbound = (each: Prepared): Prepared =>
  each.bidding === undefined ? each : { ...each, bidding: { ...each.bidding, bound: -1 } };

const CANT_HOLD: PlanFault = {
  about: 'pinned',
  sentence:
    'The purse does not hold the lots you want and the proxies that are in, all at once. Withdraw a proxy, or want one lot less.',
};

function work(prepared: readonly (readonly Prepared[])[], means: PlanMeans) {
  const taking = prepared
    .map((batch) => batch.filter(({ bidding }) => bidding !== undefined))
    .filter((batch) => batch.length > 0);
  const batches = batchesOf(taking);
  const worked = workPlan(batches, means);
  const bids = new Map<Prepared, Bid>();
  taking.forEach((batch, i) => {
    batch.forEach((each, j) => {
      const bid = worked.bids[i]?.[j];
      if (bid !== undefined) bids.set(each, bid);
    });
  });
  return { taking, batches, worked, bids };
}

/** The lots that take part, as the recursion takes them. */
export const batchesOf = (taking: readonly (readonly Prepared[])[]): readonly PlanBatch[] =>
  taking.map((batch) => ({
    at: batch[0]?.lot.close ?? 0,
    lots: batch.flatMap(({ bidding }) => (bidding === undefined ? [] : [bidding])),
  }));
