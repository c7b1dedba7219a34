import { roundedCents } from '../money/cents.ts';
import type { TimedLot } from './closing-order.ts';
import type { Fan, FanPoint } from './plan.ts';
import { solve } from './solve.ts';
import { indexOf, planeOf, type Space, type Stage, sizeOf, UNPAYABLE } from './space.ts';
import { endOf, type PlanBatch, type PlanMeans, settingOf, stagedOf } from './worked-plan.ts';

/** One level of the weekend: how likely it is, and the batches with the chances it gives. */
export interface FanLevel {
  readonly chance: number;
  readonly batches: readonly PlanBatch[];
}

/** How much coarser the fan is worked out than the plan. */
const COARSER = 8;

/**
 * What following the plan may lead to, close by close: the plan's bids at every state that can be reached, played forward over
 * the levels that the weekend may have. Bids that close together are those of the purse as it is now, cut to what is left.
 * @param planned for each batch and lot the number of the price point bid up to, −1 for none
 */
export function fanOf(
  lots: readonly (readonly TimedLot[])[],
  batches: readonly PlanBatch[],
  means: PlanMeans,
  levels: readonly FanLevel[],
  planned: readonly (readonly number[])[],
): readonly FanPoint[] {
  const setting = settingOf(batches, means, COARSER);
  const { space, cells } = setting.fineness;
  const staged = stagedOf(batches, setting);
  const after = new Map<number, Float64Array>();
  for (const level of levels) {
    solve(stagedOf(level.batches, setting), endOf(setting), means.allowed === undefined, (i, next) => {
      const sum = after.get(i) ?? new Float64Array(next.length);
      for (let at = 0; at < next.length; at++) sum[at] = (sum[at] as number) + level.chance * (next[at] as number);
      after.set(i, sum);
    });
  }
  const plays = levels.map(({ chance, batches: own }) => ({
    chance,
    staged: stagedOf(own, setting),
    held: startAt(space, indexOf(space, setting.now)),
    cars: 0,
    profit: 0,
  }));
  const points: FanPoint[] = [];
  batches.forEach((batch, i) => {
    for (const play of plays) arrive(play.held, space, staged[i]?.income ?? 0, staged[i]?.freed ?? 0);
    batch.lots.forEach((_, j) => {
      const lot = lots[i]?.[j];
      for (const play of plays) {
        const stage = play.staged[i]?.stages[j];
        const next = after.get(i);
        if (stage === undefined || next === undefined) continue;
        const bid = batch.lots.length > 1 ? lastUpTo(stage, planned[i]?.[j] ?? -1) : undefined;
        const won = playLot(play.held, next, space, stage, bid);
        play.cars += won.cars;
        play.profit += won.profit;
      }
      if (lot === undefined) return;
      const mean = (of: (play: (typeof plays)[number]) => number) =>
        plays.reduce((sum, play) => sum + play.chance * of(play), 0) /
        plays.reduce((sum, { chance }) => sum + chance, 0);
      points.push({
        at: lot.close,
        lotId: lot.id,
        cash: cashFan(plays, space, cells.cash),
        cars: mean(({ cars }) => cars),
        profit: roundedCents(mean(({ profit }) => profit)),
      });
    });
  });
  return points;
}

function startAt(space: Space, at: number): Float64Array {
  const held = new Float64Array(sizeOf(space));
  held[at] = 1;
  return held;
}

/** The number of the last of a stage's prices that a bid up to a price point takes. */
function lastUpTo({ upTo }: Stage, point: number): number {
  let last = -1;
  for (let j = 0; j < upTo.length; j++) if ((upTo[j] as number) <= point) last = j;
  return last;
}

/** Money and places that come in move what is held up. */
function arrive(held: Float64Array, space: Space, income: number, freed: number): void {
  if (income <= 0 && freed <= 0) return;
  const before = held.slice();
  held.fill(0);
  const plane = planeOf(space);
  before.forEach((chance, at) => {
    if (chance === 0) return;
    const places = space.places === null ? 0 : Math.min(space.places, Math.floor(at / plane) + freed);
    const row = Math.floor((at % plane) / space.cash);
    const cash = Math.min(space.cash - 1, (at % space.cash) + income);
    const to = places * plane + row * space.cash + cash;
    held[to] = (held[to] as number) + chance;
  });
}

/** Plays one lot at every state held. Winning always leaves less, so states are gone through from the poorest up. */
function playLot(
  held: Float64Array,
  next: Float64Array,
  space: Space,
  stage: Stage,
  fixed: number | undefined,
): { readonly cars: number; readonly profit: number } {
  const plane = planeOf(space);
  let [cars, profit] = [0, 0];
  for (let at = 0; at < held.length; at++) {
    const chance = held[at] as number;
    if (chance < 1e-9) continue;
    const limited = space.places !== null;
    if (limited && at < plane) continue;
    const after = limited ? at - plane : at;
    const line = Math.floor((at % plane) / space.cash);
    const cash = at % space.cash;
    const cur = next[at] as number;
    let left = chance;
    for (let j = 0; j < stage.chance.length; j++) {
      if (fixed !== undefined && j > fixed) break;
      let [best, to, earned] = [Number.NEGATIVE_INFINITY, -1, 0];
      for (const way of stage.ways) {
        const [c, l] = [way.cash[j] as number, way.line[j] as number];
        if (c > cash || l > line) continue;
        const state = after - l * space.cash - c;
        const gain = (way.profit[j] as number) + (next[state] as number) - cur;
        if (gain > best) [best, to, earned] = [gain, state, way.profit[j] as number];
      }
      if (to < 0 || best < UNPAYABLE) break;
      const bound = j <= stage.bound || stage.rule === 'max' || fixed !== undefined;
      if (!bound && best < 0) {
        if (stage.falling) break;
        continue;
      }
      const part = chance * (stage.chance[j] as number);
      if (to !== at) {
        held[to] = (held[to] as number) + part;
        left -= part;
      }
      cars += part;
      profit += part * earned;
    }
    held[at] = left;
  }
  return { cars, profit };
}

/** The middle of the cash left, and its worst and best tenth. */
function cashFan(
  plays: readonly { readonly chance: number; readonly held: Float64Array }[],
  space: Space,
  cell: number,
): Fan {
  const left = new Float64Array(space.cash);
  let all = 0;
  for (const { chance, held } of plays) {
    for (let at = 0; at < held.length; at++) {
      const part = chance * (held[at] as number);
      left[at % space.cash] = (left[at % space.cash] as number) + part;
      all += part;
    }
  }
  const quantile = (share: number) => {
    let sum = 0;
    for (let b = 0; b < left.length; b++) {
      sum += left[b] as number;
      if (sum >= share * all) return roundedCents(b * cell);
    }
    return roundedCents((left.length - 1) * cell);
  };
  return { worst: quantile(0.1), likely: quantile(0.5), best: quantile(0.9) };
}
