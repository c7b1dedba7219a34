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
  const wins = stage.chance.length;
  const played: Played = { gain: new Float64Array(wins), to: new Int32Array(wins), earned: new Float64Array(wins) };
  let [cars, profit] = [0, 0];
  for (let at = 0; at < held.length; at++) {
    const chance = held[at] as number;
    if (chance < 1e-9) continue;
    const known = playAt(played, at, next, space, stage);
    const bid = fixed === undefined ? bidOf(stage, played.gain, known) : Math.min(fixed, known - 1);
    let left = chance;
    for (let j = 0; j <= bid; j++) {
      // At a sealed sale the bid itself is paid, whichever rival it beats.
      const price = stage.rule === 'sealed' ? bid : j;
      const to = played.to[price] as number;
      const part = chance * (stage.chance[j] as number);
      if (to !== at) {
        held[to] = (held[to] as number) + part;
        left -= part;
      }
      cars += part;
      profit += part * (played.earned[price] as number);
    }
    held[at] = left;
  }
  return { cars, profit };
}

/** What winning at each price leads to at one state, by the better way to pay. */
interface Played {
  readonly gain: Float64Array;
  readonly to: Int32Array;
  readonly earned: Float64Array;
}

/** @returns how many prices can be paid: a bid binds to every price below it */
function playAt({ gain, to, earned }: Played, at: number, next: Float64Array, space: Space, stage: Stage): number {
  const plane = planeOf(space);
  const limited = space.places !== null;
  if (limited && at < plane) return 0;
  const after = limited ? at - plane : at;
  const line = Math.floor((at % plane) / space.cash);
  const cash = at % space.cash;
  const cur = next[at] as number;
  for (let j = 0; j < gain.length; j++) {
    let best = Number.NEGATIVE_INFINITY;
    for (const way of stage.ways) {
      const [c, l] = [way.cash[j] as number, way.line[j] as number];
      if (c > cash || l > line) continue;
      const state = after - l * space.cash - c;
      const one = (way.profit[j] as number) + (next[state] as number) - cur;
      if (one <= best) continue;
      best = one;
      to[j] = state;
      earned[j] = way.profit[j] as number;
    }
    if (best < UNPAYABLE) return j;
    gain[j] = best;
  }
  return gain.length;
}

/** The bid by a stage's rule, of the prices that can be paid: the highest of those that are worth most. */
function bidOf({ chance, rule, bound }: Stage, gain: Float64Array, known: number): number {
  if (rule === 'max') return known - 1;
  let bid = Math.min(bound, known - 1);
  let [sum, most] = [0, bound < 0 ? 0 : Number.NEGATIVE_INFINITY];
  for (let j = 0; j < known; j++) {
    sum += (chance[j] as number) * (rule === 'sealed' ? 1 : (gain[j] as number));
    if (j < bound) continue;
    const worth = rule === 'sealed' ? sum * (gain[j] as number) : sum;
    if (worth < most || (worth === most && (gain[j] as number) < 0)) continue;
    [most, bid] = [worth, j];
  }
  return bid;
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
