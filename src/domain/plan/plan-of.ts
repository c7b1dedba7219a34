import { attempt } from '../attempt.ts';
import { ENOUGH_CLOSINGS, type Market } from '../market/market.ts';
import { roundedCents } from '../money/cents.ts';
import type { Instant } from '../time/instant.ts';
import { cashBy, cashPath } from './cash-path.ts';
import { closingOrder } from './closing-order.ts';
import { exposureOf, proxyOver, purseFaults } from './exposure.ts';
import { outOfLineFaults, overMaxFaults, reachFaults, untitledFaults } from './lot-faults.ts';
import type { Plan, PlanFault } from './plan.ts';
import { figuresOf } from './plan-figures.ts';
import type { PlanLot } from './plan-lot.ts';
import { planRows, rowOutside } from './plan-row.ts';
import { type Prepared, prepare } from './prepare.ts';
import type { Purse } from './purse.ts';
import { runPlan } from './run-plan.ts';
import type { PlanMeans } from './worked-plan.ts';

/**
 * Which bids to place so that the purse earns the most.
 * @param lots in any order; lots with closes behind them are shown and take no part
 * @param market what closings teach, with this weekend's seen so far
 */
export function planOf(lots: readonly PlanLot[], purse: Purse, market: Market, now: Instant): Plan {
  const order = closingOrder(lots, purse, now);
  const path = cashPath(purse, now);
  const cash = path[0]?.cents ?? 0;
  const line = Math.max(0, purse.line?.free ?? 0);
  const outside = withProxy([...order.noClose, ...order.afterPurse], line);
  const timed = order.batches.flat();
  const standingLots = [...withProxy(timed, line), ...outside];
  const standing = exposureOf(standingLots, line);
  const later = exposureOf(outside, line);
  const room = { cash: Math.max(0, cash), line, places: purse.places === undefined ? null : Math.max(0, purse.places) };
  const levels = market.levels().map(({ chance }) => chance);
  const means: PlanMeans = {
    // What proxies on lots outside the plan could take is not there for the others.
    path: path.map(({ at, cents }) => ({ at, cents: cents - later.cash })),
    line: Math.max(0, line - later.line),
    places: purse.places === undefined ? null : Math.max(0, purse.places - later.cars),
    freed: purse.flows.flatMap(({ at, places = 0 }) => (at > now && places > 0 ? [{ at, places }] : [])),
    keptDollar: purse.keptDollar ?? 0,
    levels,
    ...(purse.overChance > 0 && { allowed: { chance: purse.overChance, weights: levels } }),
  };
  const run = runPlan(
    order.batches.map((batch) => batch.map((lot) => prepare(lot, market))),
    means,
  );
  const rows = planRows(run, { purse, cash, cashAt: (at) => cashBy(path, at), standing });
  return {
    rows: [
      ...order.closed.map((lot) => rowOutside(lot, { is: 'closed' })),
      ...rows,
      ...order.afterPurse.map((lot) => rowOutside(lot, { is: 'after-purse' })),
      ...order.noClose.map((lot) => rowOutside(lot, { is: 'no-close' })),
    ],
    ...figuresOf(run, means, market),
    standing: { cash: roundedCents(standing.cash), line: roundedCents(standing.line), cars: standing.cars },
    faults: [
      ...purseFaults(cash, purse, standing, () => proxyOver(standingLots, room, market)),
      ...run.faults,
      ...order.faults,
      ...overMaxFaults(standingLots),
      ...outOfLineFaults(timed),
      ...untitledFaults(timed, line),
      ...reachFaults(
        run.taking.flat(),
        path.at(-1)?.cents ?? 0,
        rows.some(({ plannedBid }) => plannedBid !== null),
      ),
      ...fewClosings(run.prepared.flat()),
    ],
  };
}

/** Lots with a proxy in, but those whose figures can't be worked out: they are told apart, and cost only themselves. */
function withProxy(lots: readonly PlanLot[], line: number): readonly PlanLot[] {
  return lots.filter((lot) => lot.proxy !== undefined && attempt(() => exposureOf([lot], line)).ok);
}

/** One sentence for all groups with too few closings: their rows say the rest. */
function fewClosings(prepared: readonly Prepared[]): readonly PlanFault[] {
  const few = prepared.filter(({ bidding, closings }) => bidding !== undefined && closings < ENOUGH_CLOSINGS);
  if (few.length === 0) return [];
  const lots = few.length === 1 ? 'One lot is' : `${few.length} lots are`;
  return [
    {
      about: 'closings',
      sentence: `${lots} of a group with fewer than ${ENOUGH_CLOSINGS} closings: not enough to ration cash by. The max bid stands there, as far as the purse reaches. Note how your closings end, also the ones you lose.`,
    },
  ];
}
