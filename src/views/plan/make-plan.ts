import { lotName } from '../../domain/lot/car-name.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { marketOf } from '../../domain/market/market.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import { planChanges } from '../../domain/plan/plan-changes.ts';
import type { PlanLot } from '../../domain/plan/plan-lot.ts';
import { planOf } from '../../domain/plan/plan-of.ts';
import { sayResult } from '../../domain/sale/result-words.ts';
import { wholeSetup } from '../../domain/setup/starting-setup.ts';
import { mondayOf, startOfDay } from '../../domain/time/calendar-day.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { pricingContext } from '../../domain/worksheet/pricing-context.ts';
import { isOver } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import { type SetupState, sectionsOf } from '../../journal/states/setup-state.ts';
import { beliefsAtClose } from '../learn/beliefs-at-close.ts';
import type { EntriesOfLots } from '../learn/entries-of-lots.ts';
import { contextsThen } from '../learn/past-lots.ts';
import { standingsUnder } from '../lots/standing.ts';
import { closingsOf, type KeptClosing, keptClosing, lotsThatClosed } from './closings-of.ts';
import { type KeptPlan, PLAN_VERSION, type PlanChanged, plannedBids, plannedOf } from './kept-plan.ts';
import { planLot, stillOpen } from './plan-lots.ts';
import { purseOf } from './purse-of.ts';

/** All that a plan is made from, as it was at one moment. */
export interface PlanInputs {
  /** Stands for that moment: another one once a lot, the setup, the purse or the books change. */
  readonly basis: string;
  readonly setup: SetupState;
  /** Every lot, dropped ones too. */
  readonly lots: readonly LotState[];
  readonly books: BooksState;
}

interface Making {
  readonly now: Instant;
  /** Of this computer, for a dealer who has not set his own. */
  readonly zone: Zone;
  /** The plan before. */
  readonly before: KeptPlan | null;
  /** Reads what was written about lots. */
  readonly entriesOf: (lots: readonly LotId[]) => Promise<EntriesOfLots>;
  /** Lets others have their turn: a worksheet takes a millisecond or two. */
  readonly pause: () => Promise<void>;
}

/** Makes the plan; null without a purse. */
export async function makePlan(
  { basis, setup: kept, lots, books }: PlanInputs,
  making: Making,
): Promise<KeptPlan | null> {
  const { now, before, pause } = making;
  if (kept?.purse === undefined) return null;
  const { purse: entry } = kept;
  const setup = wholeSetup(sectionsOf(kept), making.zone);
  const context = pricingContext(setup);
  const purse = purseOf({ entry, setup, context, lots, books, now });
  const closings = await keptClosings(lots, setup.store.zone, making);
  const weekendFrom = startOfDay(mondayOf(dateIn(setup.store.zone, now)), setup.store.zone);
  const { closings: telling, groupOf } = closingsOf(closings, weekendFrom);
  const { bids } = standingsUnder(setup);
  const closeBefore = new Map(before?.plan.rows.map(({ lotId, close }) => [lotId, close]));
  const from = { context, bids, groupOf, closeBefore: ({ id }: LotState) => closeBefore.get(id) };
  const planLots: PlanLot[] = [];
  for (const lot of stillOpen(lots, now)) {
    planLots.push(planLot(lot, from));
    await pause();
  }
  const market = marketOf(telling, weekendFrom);
  await pause();
  const plan = planBeside(planLots, (lots) => planOf(lots, purse.purse, market, now));
  const made = { version: PLAN_VERSION, madeAt: now, basis, plan, purse, level: market.level, closings };
  return {
    ...made,
    bids: plan.rows.flatMap((row) => {
      const planned = plannedOf(row);
      return planned === undefined ? [] : [[row.lotId as LotId, planned] as const];
    }),
    atClose: plannedAtClose(before, lots, now),
    changed: changedSince(before, made, lots),
  };
}

/**
 * Where the purse can't even pay for the proxies that are in, no bid can be planned beside them: then what is planned is what
 * they should be, as if each could still be lowered, and what is wrong is said.
 */
function planBeside(lots: readonly PlanLot[], plan: (lots: readonly PlanLot[]) => Plan): Plan {
  const beside = plan(lots);
  const stuck =
    beside.faults.some(({ about }) => about === 'proxies') && beside.rows.every((row) => row.plannedBid === null);
  if (!stuck) return beside;
  const free = plan(lots.map(({ proxy: _, ...lot }) => lot));
  return { ...free, standing: beside.standing, faults: beside.faults };
}

/** What was believed as each lot closed is worked out once: nothing that is written later changes it. */
async function keptClosings(
  lots: readonly LotState[],
  zone: Zone,
  { before, entriesOf, pause }: Making,
): Promise<readonly KeptClosing[]> {
  const known = new Map(before?.closings.map((one) => [`${one.lot} ${one.key}`, one]));
  const closed = lotsThatClosed(lots);
  const fresh = closed.filter(({ lot, key }) => !known.has(`${lot.id} ${key}`));
  const beliefs = fresh.length === 0 ? new Map() : beliefsAtClose(await entriesOf(fresh.map(({ lot }) => lot.id)));
  const contextOf = contextsThen(zone);
  const all: KeptClosing[] = [];
  for (const one of closed) {
    const there = known.get(`${one.lot.id} ${one.key}`);
    const then = there === undefined ? beliefs.get(one.lot.id) : undefined;
    all.push(
      there ?? keptClosing(one, then === undefined ? null : { facts: then.lot.facts, context: contextOf(then.setup) }),
    );
    if (there === undefined) await pause();
  }
  return all;
}

/** What the plan before said of lots that are over and wait for their result. */
function plannedAtClose(before: KeptPlan | null, lots: readonly LotState[], now: Instant): KeptPlan['atClose'] {
  const said = plannedBids(before);
  return lots.flatMap((lot) => {
    const planned = said.get(lot.id);
    const waits = planned !== undefined && !lot.dropped && lot.sale?.result === undefined && isOver(lot, now);
    return waits ? [[lot.id, planned] as const] : [];
  });
}

/** A plan that bids as the one before goes on saying what changed last. */
function changedSince(
  before: KeptPlan | null,
  { plan, purse, madeAt }: Pick<KeptPlan, 'plan' | 'purse' | 'madeAt'>,
  lots: readonly LotState[],
): PlanChanged | null {
  if (before === null) return null;
  const changes = planChanges(before.plan, plan);
  if (changes.length === 0) return before.changed;
  const ended = lots.flatMap(({ facts, sale }) =>
    sale?.result !== undefined && sale.result.notedAt > before.madeAt
      ? [`${lotName(facts)}: ${sayResult(sale.result.result).toLowerCase()}.`]
      : [],
  );
  const counted = JSON.stringify(before.purse.entry) === JSON.stringify(purse.entry) ? [] : ['The purse was changed.'];
  return { at: madeAt, because: [...counted, ...ended], changes };
}
