import { groupBy } from '../group-by.ts';
import type { Instant } from '../time/instant.ts';
import { DAY } from '../time/units.ts';
import { type Belief, beliefAfter, normalized, type Prior, priorFrom, STARTING_PRIOR } from './belief.ts';
import type { Closing } from './closing.ts';
import { addReading, emptyTable, LEVELS, type LogTable, ROWS, SPREADS, STEP } from './limit-grid.ts';
import { groupKey, type MarketGroup } from './market-group.ts';
import { type Reading, readingOf } from './reading.ts';
import { type RivalCurve, rivalCurve } from './rival-curve.ts';

/** With fewer closings of its group a lot's chance to be won is too uncertain to ration cash by. */
export const ENOUGH_CLOSINGS = 20;

/** How far prices of one weekend lie above or below the usual, for all lots together. */
export interface WeekendLevel {
  /** Mean and standard deviation, in logarithms: 0.03 is 3% above the usual. */
  readonly mean: number;
  readonly sd: number;
  /** Closings of this weekend that it rests on; with none it is 0 give or take 6%. */
  readonly closings: number;
}

/** One level that the weekend may have, with the rivals as they are then. */
export interface LevelNode {
  readonly level: number;
  readonly chance: number;
  readonly curveOf: (group: MarketGroup) => RivalCurve;
}

/** What is known of the rivals. */
export interface Market {
  readonly level: WeekendLevel;
  /** The strongest rival of a group, averaged over everything that is uncertain, the weekend's level too. */
  readonly curveOf: (group: MarketGroup) => RivalCurve;
  /**
   * Closings of the group that say something of its rivals, earlier ones and this weekend's: each counts for 1, less as it gets
   * old, and the sum is a whole number.
   */
  readonly closingsOf: (group: MarketGroup) => number;
  /** The levels that the weekend may have, for what depends on all lots being high or low together. */
  readonly levels: () => readonly LevelNode[];
  /** The same after more closings of this weekend: much quicker than from the start. */
  readonly after: (closings: readonly Closing[]) => Market;
}

/** Standard deviation of a weekend's level, before any of its closings. */
const LEVEL_SD = 0.06;

/** After so many days a closing counts for half: see the plan's README for what it costs and saves. */
export const CLOSING_HALF_LIFE = 90;

/** What is thought before any closing, and how fast closings get old. */
export interface MarketOptions {
  readonly prior?: Prior;
  /** Days, above 0. */
  readonly halfLife?: number;
}

/** What a closing counts for in a weekend: 1, half after each half-life before it (a power prior; Ibrahim & Chen 2000). */
export function closingWeight(at: Instant, weekendFrom: Instant, halfLife: number = CLOSING_HALF_LIFE): number {
  return 2 ** (-Math.max(0, weekendFrom - at) / (halfLife * DAY));
}

interface Group {
  readonly history: LogTable;
  readonly weekend: LogTable;
  /** Sum of what its closings count for. */
  readonly closings: number;
  readonly seenBefore: number;
  readonly seenNow: number;
}

/**
 * What closings teach of the rivals.
 * @param closings in any order
 * @param weekendFrom closings from then on are this weekend's: they also tell how high its prices run
 */
export function marketOf(
  closings: readonly Closing[],
  weekendFrom: Instant,
  { prior = STARTING_PRIOR, halfLife = CLOSING_HALF_LIFE }: MarketOptions = {},
): Market {
  const groups = new Map<string, Group>();
  for (const [key, list] of groupBy(closings, ({ group }) => groupKey(group)))
    groups.set(key, tabled(list, weekendFrom, halfLife));
  const beliefs = remember((key) =>
    beliefAfter(priorFrom(prior, historyWithout(groups, key)), (groups.get(key) ?? NONE).history),
  );
  return marketWith(groups, beliefs);
}

const NONE: Group = { history: emptyTable(), weekend: emptyTable(), closings: 0, seenBefore: 0, seenNow: 0 };

/** @param beliefs of each group by the closings of earlier weekends */
function marketWith(groups: ReadonlyMap<string, Group>, beliefs: (key: string) => Belief): Market {
  const groupOf = (key: string): Group => groups.get(key) ?? NONE;
  const evidence = [...groups].flatMap(([key, group]) =>
    group.seenNow === 0 ? [] : [[key, evidenceOf(beliefs(key), group.weekend)] as const],
  );
  /** Chances of the levels, by everything but one group's own closings of this weekend. */
  const levelsWithout = (key: string | undefined): Float64Array => {
    const logs = Float64Array.from(
      { length: 2 * LEVELS + 1 },
      (_, i) => -0.5 * (((i - LEVELS) * STEP) / LEVEL_SD) ** 2,
    );
    for (const [other, given] of evidence) if (other !== key) addTo(logs, given);
    return normalized(logs);
  };
  const levels = levelsWithout(undefined);
  const curves = remember((key) => rivalCurve(shiftedBelief(beliefs(key), groupOf(key).weekend, levelsWithout(key))));
  const nodes = (): readonly LevelNode[] =>
    gathered(levels).map(({ level, chance }) => {
      const only = new Float64Array(2 * LEVELS + 1);
      only[level + LEVELS] = 1;
      const at = remember((key) => rivalCurve(shiftedBelief(beliefs(key), groupOf(key).weekend, only)));
      return { level: level * STEP, chance, curveOf: (group) => at(groupKey(group)) };
    });
  let known: readonly LevelNode[] | undefined;
  return {
    level: { ...levelMoments(levels), closings: [...groups.values()].reduce((sum, { seenNow }) => sum + seenNow, 0) },
    curveOf: (group) => curves(groupKey(group)),
    closingsOf: (group) => Math.round(groupOf(groupKey(group)).closings),
    levels: () => {
      known ??= nodes();
      return known;
    },
    after: (closings) => marketWith(withSeen(groups, closings), beliefs),
  };
}

/** The belief of one group from readings alone, its median and spread: what the learning screens show. */
export function rivalsOf(
  readings: readonly Reading[],
  prior: Prior = STARTING_PRIOR,
): { readonly belief: Belief; readonly curve: RivalCurve } {
  const table = emptyTable();
  for (const reading of readings) addReading(table, reading);
  const belief = beliefAfter(prior, table);
  return { belief, curve: rivalCurve(belief) };
}

function tabled(closings: readonly Closing[], weekendFrom: Instant, halfLife: number): Group {
  const history = emptyTable();
  const weekend = emptyTable();
  let [sum, seenBefore, seenNow] = [0, 0, 0];
  for (const closing of closings) {
    const reading = readingOf(closing);
    if (reading === undefined) continue;
    const weight = closingWeight(closing.at, weekendFrom, halfLife);
    sum += weight;
    if (closing.at >= weekendFrom) seenNow++;
    else seenBefore++;
    addReading(closing.at >= weekendFrom ? weekend : history, reading, weight);
  }
  return { history, weekend, closings: sum, seenBefore, seenNow };
}

function withSeen(groups: ReadonlyMap<string, Group>, closings: readonly Closing[]): ReadonlyMap<string, Group> {
  const all = new Map(groups);
  for (const closing of closings) {
    const reading = readingOf(closing);
    if (reading === undefined) continue;
    const key = groupKey(closing.group);
    const group = all.get(key) ?? NONE;
    const weekend = group.weekend.slice();
    addReading(weekend, reading);
    all.set(key, { ...group, weekend, closings: group.closings + 1, seenNow: group.seenNow + 1 });
  }
  return all;
}

/** Every other group's closings of earlier weekends; undefined when there are none. */
function historyWithout(groups: ReadonlyMap<string, Group>, key: string): LogTable | undefined {
  const others = [...groups].filter(([other, { seenBefore }]) => other !== key && seenBefore > 0);
  if (others.length === 0) return undefined;
  const sum = emptyTable();
  for (const [, { history }] of others) addTo(sum, history);
  return sum;
}

function addTo(sum: Float64Array, values: Float64Array): void {
  for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + (values[i] as number);
}

/** Logarithm of how well each level of the weekend explains a group's closings: a level shifts every median by as much. */
function evidenceOf(belief: Belief, weekend: LogTable): Float64Array {
  const most = weekend.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const likely = weekend.map((value) => Math.exp(value - most));
  return Float64Array.from({ length: 2 * LEVELS + 1 }, (_, i) => {
    const by = (i - LEVELS) * SPREADS;
    let sum = 0;
    for (let at = LEVELS * SPREADS; at < (ROWS - LEVELS) * SPREADS; at++) {
      sum += (belief[at] as number) * (likely[at + by] as number);
    }
    return Math.log(Math.max(sum, 1e-300));
  });
}

/** The belief over medians as the weekend has them: each level's share of it, weighed by the group's own closings. */
function shiftedBelief(belief: Belief, weekend: LogTable, levels: Float64Array): Belief {
  const sum = emptyTable();
  levels.forEach((chance, i) => {
    if (chance < 1e-12) return;
    const by = (i - LEVELS) * SPREADS;
    for (let at = LEVELS * SPREADS; at < (ROWS - LEVELS) * SPREADS; at++) {
      sum[at + by] = (sum[at + by] as number) + chance * (belief[at] as number);
    }
  });
  return normalized(
    sum.map((chance, at) => (chance > 0 ? Math.log(chance) + (weekend[at] as number) : Number.NEGATIVE_INFINITY)),
  );
}

function levelMoments(levels: Float64Array): { readonly mean: number; readonly sd: number } {
  let [mean, square] = [0, 0];
  levels.forEach((chance, i) => {
    const level = (i - LEVELS) * STEP;
    mean += chance * level;
    square += chance * level * level;
  });
  return { mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) };
}

/** Levels less likely than this are left out. */
const SELDOM = 0.003;
/** Every how many levels one stands for those around it. */
const APART = 4;

/** Fewer levels with the same mean: what lies between two is shared out to both. */
function gathered(levels: Float64Array): readonly { readonly level: number; readonly chance: number }[] {
  const chances = new Map<number, number>();
  levels.forEach((chance, i) => {
    const low = Math.floor((i - LEVELS) / APART) * APART;
    const part = (i - LEVELS - low) / APART;
    chances.set(low, (chances.get(low) ?? 0) + chance * (1 - part));
    if (part > 0) chances.set(low + APART, (chances.get(low + APART) ?? 0) + chance * part);
  });
  const likely = [...chances].filter(([, chance]) => chance > SELDOM);
  const all = likely.reduce((sum, [, chance]) => sum + chance, 0);
  return likely.map(([level, chance]) => ({ level, chance: chance / all }));
}

function remember<Value>(work: (key: string) => Value): (key: string) => Value {
  const known = new Map<string, Value>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = work(key);
    known.set(key, value);
    return value;
  };
}
