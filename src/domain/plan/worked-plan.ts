import { againstAt, type Bid, bidAt, bidBy, type Standpoint } from './bid-at.ts';
import { type Allowed, bidsByChance, worthOfBids } from './bids-by-chance.ts';
import { bidsTogether } from './bids-together.ts';
import { atLevels, mixedGains, type SeenBatch, seeBatch } from './by-level.ts';
import { type CashStep, cashBy } from './cash-path.ts';
import { cellSizes, type Fineness, type Means } from './cell-sizes.ts';
import { type StagedBatch, solve } from './solve.ts';
import { indexOf, type Stage, type State, UNPAYABLE } from './space.ts';
import { type Bidding, type Coarser, stageOf } from './stage.ts';

/** Lots that close together, ready for the recursion. */
export interface PlanBatch {
  readonly at: number;
  readonly lots: readonly Bidding[];
}

/** What there is to buy with, over time. */
export interface PlanMeans {
  /** Cash that may be promised by when; the first step is now. */
  readonly path: readonly CashStep[];
  /** What can be drawn on the line; cents, 0 or more. */
  readonly line: number;
  /** Places now; null where there are always enough. */
  readonly places: number | null;
  /** Places that come free. */
  readonly freed: readonly { readonly at: number; readonly places: number }[];
  readonly keptDollar: number;
  /** How likely the levels are that the lots' chances are given for, adding up to 1; absent where one set of chances holds. */
  readonly levels?: readonly number[];
  /** Absent for the hard rule: bids that stand at one time can never win more than there is. */
  readonly allowed?: Allowed;
}

/** What one more of each would add; cents. */
export interface Worths {
  readonly thousand: number;
  readonly lineThousand: number;
  readonly place: number;
}

export interface WorkedPlan {
  /** Expected profit; cents. Below {@link UNPAYABLE} where what binds us costs more than there is. */
  readonly value: number;
  /** For each batch and lot, with the purse as it is if nothing was won before. */
  readonly bids: readonly (readonly Bid[])[];
  readonly worths: Worths;
  readonly fineness: Fineness;
}

const THOUSAND = 100_000;

/**
 * Works out the plan: values from the last batch back, and each batch's bids on the way. Where the level of the weekend is
 * uncertain the values are worked out for each level it may have, and a price is weighed by the levels at which it would be
 * paid: a lot that can be had cheaply tells that money is worth more in the lots still to come.
 * @param coarser divides the steps that may be taken
 */
export function workPlan(batches: readonly PlanBatch[], means: PlanMeans, coarser = 1): WorkedPlan {
  const levels = atLevels(batches, means);
  const setting = settingOf(batches, means, Math.max(coarser, (coarser * levels.length) / 2));
  const seen = new Map<number, SeenBatch>();
  let value = 0;
  let worths: Worths = { thousand: 0, lineThousand: 0, place: 0 };
  for (const { weight, cautious, batches: own } of levels) {
    const before = solve(stagedOf(own, setting), endOf(setting), means.allowed === undefined, (i, next) => {
      const batch = own[i];
      if (batch !== undefined) seen.set(i, seeBatch(seen.get(i), batch, cautious, standpoint(setting, i, next)));
    });
    value += weight * valueAt(before, setting);
    worths = added(worths, worthsOf(before, setting), weight);
  }
  const staged = stagedOf(batches, setting);
  const bids = batches.map((batch, i): readonly Bid[] => {
    const all = seen.get(i);
    const [only] = batch.lots;
    if (all === undefined || only === undefined) return [];
    if (batch.lots.length === 1) return [bidBy(only, mixedGains(all.gains))];
    return bidsOf(batch, staged[i]?.stages ?? [], standpoint(setting, i, all.next), means.allowed);
  });
  return { value, bids, worths, fineness: setting.fineness };
}

const standpoint = (
  { fineness: { space, cells }, states, now }: Setting,
  batch: number,
  next: Float64Array,
): Standpoint => ({
  next,
  space,
  cells,
  state: states[batch] ?? now,
});

function added(one: Worths, other: Worths, weight: number): Worths {
  return {
    thousand: one.thousand + weight * other.thousand,
    lineThousand: one.lineThousand + weight * other.lineThousand,
    place: one.place + weight * other.place,
  };
}

/** The expected profit alone. */
export function planValue(batches: readonly PlanBatch[], means: PlanMeans, coarser = 1): number {
  const setting = settingOf(batches, means, coarser);
  return valueAt(solve(stagedOf(batches, setting, 'within'), endOf(setting), means.allowed === undefined), setting);
}

/**
 * What no plan can do better than: money rounded in our favor, each lot bid on as is best, and lots that close together
 * bid on one after the other.
 */
export function planCeiling(batches: readonly PlanBatch[], means: PlanMeans, coarser = 1): number {
  const free = batches.map(({ at, lots }) => ({
    at,
    lots: lots.map((lot) => ({ ...lot, rule: bestRule(lot), bound: -1 })),
  }));
  const setting = settingOf(free, means, coarser, 'beyond');
  return valueAt(solve(stagedOf(free, setting, 'beyond'), endOf(setting), false), setting);
}

const bestRule = ({ rule }: Bidding): Bidding['rule'] => (rule === 'sealed' ? 'sealed' : 'best');

/** Everything that the recursion is set up with. */
export interface Setting {
  readonly fineness: Fineness;
  readonly way: Coarser;
  /** Cells of cash, and places, at each batch if nothing is won before; and now, before the first. */
  readonly states: readonly State[];
  readonly now: State;
  readonly keptDollar: number;
}

export function settingOf(
  batches: readonly PlanBatch[],
  means: PlanMeans,
  coarser = 1,
  way: Coarser = 'within',
): Setting {
  const last = batches.at(-1)?.at ?? 0;
  const lots = batches.flatMap((batch) => batch.lots);
  const freedBy = (at: number) => means.freed.reduce((sum, each) => (each.at <= at ? sum + each.places : sum), 0);
  const cash = (at: number) => Math.max(0, cashBy(means.path, at));
  // With a place for each lot they limit nothing, but one more could be worth something only if they do.
  const places = means.places === null || means.places >= lots.length ? null : Math.max(0, means.places);
  const all: Means = {
    cash: cash(last) + THOUSAND,
    line: means.line > 0 ? means.line + THOUSAND : 0,
    places: places === null ? null : Math.min(lots.length, places + freedBy(last) + 1),
    marks: {
      cash: [...means.path.map(({ cents }) => Math.max(0, cents)), THOUSAND],
      line: means.line > 0 ? [means.line, THOUSAND] : [],
    },
  };
  const fineness = cellSizes(
    lots.map(({ points }) => points),
    all,
    coarser,
  );
  const { cells, space } = fineness;
  const whole = way === 'within' ? Math.floor : Math.ceil;
  const stateAt = (at: number): State => ({
    cash: Math.min(space.cash - 1, whole(cash(at) / cells.cash)),
    line: Math.min(space.lines - 1, whole(means.line / cells.line)),
    places: places === null ? 0 : Math.min(space.places ?? 0, places + freedBy(at)),
  });
  return {
    fineness,
    way,
    states: batches.map(({ at }) => stateAt(at)),
    now: stateAt(batches[0]?.at ?? 0),
    keptDollar: means.keptDollar,
  };
}

export function stagedOf(
  batches: readonly PlanBatch[],
  { fineness, way, states, now }: Setting,
  as: Coarser = way,
): readonly StagedBatch[] {
  return batches.map(({ lots }, i) => ({
    stages: lots.map((lot) => stageOf(lot, fineness.cells, fineness.points, as)),
    income: (states[i] ?? now).cash - (states[i - 1] ?? now).cash,
    freed: (states[i] ?? now).places - (states[i - 1] ?? now).places,
  }));
}

export const endOf = ({ fineness, keptDollar }: Setting) => ({
  space: fineness.space,
  keptCell: keptDollar * fineness.cells.cash,
});

/** The bids of lots that close together, with what there is at their close if nothing was won before. */
function bidsOf(
  { lots }: PlanBatch,
  stages: readonly Stage[],
  from: Standpoint,
  allowed: Allowed | undefined,
): readonly Bid[] {
  const { next, space, cells, state } = from;
  const hard = bidsTogether(next, space, stages, state).map((bid, i) => stages[i]?.upTo[bid] ?? -1);
  const room = {
    cash: state.cash * cells.cash,
    line: state.line * cells.line,
    places: space.places === null ? null : state.places,
  };
  const loose = allowed && bidsByChance(lots, from, room, allowed);
  const bids = loose && worthOfBids(lots, loose, from) > worthOfBids(lots, hard, from) ? loose : hard;
  return lots.map((lot, i) => {
    const at = bids[i] ?? -1;
    const alone = bidAt(lot, from);
    return alone.at > at ? { at, against: { is: 'others' } } : { at, against: againstAt(lot.points, at, from) };
  });
}

function valueAt(before: Float64Array, { fineness: { space }, now }: Setting): number {
  return before[indexOf(space, now)] as number;
}

function worthsOf(before: Float64Array, { fineness: { space, cells }, now }: Setting): Worths {
  const value = before[indexOf(space, now)] as number;
  const more = (state: State): number => {
    const then = before[indexOf(space, state)] as number;
    return value < UNPAYABLE || then < UNPAYABLE ? 0 : Math.max(0, then - value);
  };
  return {
    thousand: more({ ...now, cash: Math.min(space.cash - 1, now.cash + Math.round(THOUSAND / cells.cash)) }),
    lineThousand: more({ ...now, line: Math.min(space.lines - 1, now.line + Math.round(THOUSAND / cells.line)) }),
    place: space.places === null ? 0 : more({ ...now, places: Math.min(space.places, now.places + 1) }),
  };
}
