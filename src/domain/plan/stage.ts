import type { PricePoints, WayAtPoints } from './price-points.ts';
import type { Stage, StageRule, StageWay } from './space.ts';

/** Size of the cells; whole cents. */
export interface Cells {
  readonly cash: number;
  readonly line: number;
}

/**
 * How money and prices are made coarser. `within`: money up to whole cells, so that what the plan can do can be done with the
 * real money, at least as well. `beyond`: money down to whole cells and each group of prices at its best, so that nothing does
 * better.
 */
export type Coarser = 'within' | 'beyond';

/** A lot's price points as a stage of the recursion, joined to at most `most` groups of about equal chance. */
export function stageOf({ points, rule, bound }: Bidding, cells: Cells, most: number, way: Coarser): Stage {
  const groups = groupsOf(points, most, bound);
  const chance: number[] = [];
  const upTo: number[] = [];
  let boundAt = -1;
  const ways = points.ways.map((): { cash: number[]; line: number[]; profit: number[] } => ({
    cash: [],
    line: [],
    profit: [],
  }));
  for (const group of groups) {
    const spread = way === 'beyond' && group.last > group.first && group.chance > 0;
    const shares = spread ? endsOf(points, group) : [{ share: 1, at: undefined }];
    for (const { share, at } of shares) {
      chance.push(group.chance * share);
      upTo.push(group.last);
      if (group.first <= bound) boundAt = chance.length - 1;
      points.ways.forEach((given, i) => {
        const into = ways[i];
        if (into === undefined) return;
        into.profit.push(at === undefined ? meanProfit(points, given, group) : extreme(given.profit, group, at));
        into.cash.push(inCells(given.cash, group, cells.cash, way));
        into.line.push(inCells(given.line, group, cells.line, way));
      });
    }
  }
  return {
    chance: Float64Array.from(chance),
    ways: ways.map(
      (each): StageWay => ({
        cash: Int32Array.from(each.cash),
        line: Int32Array.from(each.line),
        profit: Float64Array.from(each.profit),
      }),
    ),
    rule,
    bound: boundAt,
    upTo: Int32Array.from(upTo),
    falling: points.falling,
  };
}

/** A lot's price points, and how its bid is chosen. */
export interface Bidding {
  readonly points: PricePoints;
  readonly rule: StageRule;
  /** Number of the price point up to which a proxy or the user's wish binds us; −1 where nothing does. */
  readonly bound: number;
  /** The points' chances at each level of the weekend, where it is uncertain. */
  readonly byLevel?: readonly Float64Array[];
}

interface Group {
  readonly first: number;
  readonly last: number;
  readonly chance: number;
}

/** Neighboring prices, cut where their chances add up to equal parts; each on its own while they are few. */
function groupsOf({ chance }: PricePoints, most: number, bound: number): readonly Group[] {
  if (chance.length <= most) return Array.from(chance, (each, i) => ({ first: i, last: i, chance: each }));
  const total = chance.reduce((a, b) => a + b, 0);
  const groups: Group[] = [];
  let first = 0;
  let [sum, done] = [0, 0];
  for (let i = 0; i < chance.length; i++) {
    sum += chance[i] as number;
    const full = done + sum >= (total * (groups.length + 1)) / most - 1e-12;
    // What we are bound to is never joined with what we are free to bid.
    if (i === chance.length - 1 || i === bound || (full && groups.length < most - 1)) {
      groups.push({ first, last: i, chance: sum });
      first = i + 1;
      done += sum;
      sum = 0;
    }
  }
  return groups;
}

function meanProfit({ chance }: PricePoints, { profit }: WayAtPoints, { first, last, chance: all }: Group): number {
  if (!(all > 0)) return profit[last] as number;
  let sum = 0;
  for (let i = first; i <= last; i++) sum += (chance[i] as number) * (profit[i] as number);
  return sum / all;
}

/**
 * A group's prices as its best and its worst alone, with the mean that they have: whatever is taken of a group, taking it of
 * these two is worth at least as much (the value is convex in the profit: Edmundson 1956, Madansky 1959).
 */
function endsOf(points: PricePoints, group: Group): readonly { readonly share: number; readonly at: 'high' | 'low' }[] {
  // With several ways to pay the shares that keep the first way's mean do not keep the others'.
  const [way, other] = points.ways;
  if (way === undefined || other !== undefined) return [{ share: 1, at: 'high' }];
  const [high, low] = [extreme(way.profit, group, 'high'), extreme(way.profit, group, 'low')];
  if (!(high > low)) return [{ share: 1, at: 'high' }];
  const share = Math.min(1, Math.max(0, (meanProfit(points, way, group) - low) / (high - low)));
  return [
    { share, at: 'high' },
    { share: 1 - share, at: 'low' },
  ];
}

function extreme(values: Float64Array, { first, last }: Group, at: 'high' | 'low'): number {
  const part = values.subarray(first, last + 1);
  return part.reduce((a, b) => (at === 'high' ? Math.max(a, b) : Math.min(a, b)));
}

function inCells(money: Float64Array, group: Group, cell: number, way: Coarser): number {
  const cells =
    way === 'within'
      ? Math.ceil(extreme(money, group, 'high') / cell)
      : Math.floor(extreme(money, group, 'low') / cell);
  // More than any purse has, and a whole number of 32 bits.
  return Math.min(2_000_000_000, cells);
}
