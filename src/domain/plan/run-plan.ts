import type { Bid } from './bid-at.ts';
import type { PlanFault } from './plan.ts';
import { boundBy, type Prepared } from './prepare.ts';
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

/**
 * Works out the plan. Where what binds us costs more than there is, the lots that the user wants give way first. Where the proxies
 * alone do, which the faults of the purse say, nothing is bid beside them, and each is held against what would be bid if it could
 * be lowered.
 */
export function runPlan(prepared: Prepareds, means: PlanMeans): Run {
  const first = work(prepared, means);
  if (isPaid(first)) return { ...first, prepared, faults: [] };
  const unwanted = prepared.map((batch) => batch.map((each) => boundTo(each, promised(each))));
  const second = work(unwanted, means);
  if (isPaid(second)) return { ...second, prepared: unwanted, faults: [CANT_HOLD] };
  const free = prepared.map((batch) => batch.map((each) => boundTo(each, -1)));
  const freed = work(free, means);
  // The user allows a chance of overspending, and is told elsewhere whether the proxies are within it.
  if (means.allowed !== undefined) return { ...freed, prepared: free, faults: [] };
  return { ...freed, prepared: free, bids: besideProxies(freed.bids), faults: [] };
}

type Prepareds = readonly (readonly Prepared[])[];

const isPaid = ({ worked }: Pick<Run, 'worked'>): boolean => worked.value > UNPAYABLE;

const boundTo = (each: Prepared, bound: number): Prepared =>
  each.bidding === undefined ? each : { ...each, bidding: { ...each.bidding, bound } };

const promised = ({ lot, bidding }: Prepared): number =>
  bidding === undefined ? -1 : boundBy(bidding.points.prices, lot.proxy);

/** The proxies as they are, and no bid on anything else. */
function besideProxies(bids: ReadonlyMap<Prepared, Bid>): ReadonlyMap<Prepared, Bid> {
  return new Map(
    [...bids].map(([each, { at }]): [Prepared, Bid] => {
      const proxy = promised(each);
      return [each, { at: proxy, against: { is: 'held' }, ...(proxy >= 0 && { free: at }) }];
    }),
  );
}

const CANT_HOLD: PlanFault = {
  about: 'pinned',
  sentence:
    'The purse does not hold the lots you want and the proxies that are in, all at once. Withdraw a proxy, or want one lot less.',
};

function work(prepared: Prepareds, means: PlanMeans) {
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
