import { chanceUpTo, gainAt, type Standpoint } from './bid-at.ts';
import { overChance, type Room, type Stake } from './over-chance.ts';
import type { Bidding } from './stage.ts';

/** How likely the levels of the weekend are, and the chance of overspending that the user allows. */
export interface Allowed {
  /** 0 to 1, above 0. */
  readonly chance: number;
  readonly weights: readonly number[];
}

/** How much more than their worth money and places are made to cost, step by step, until the chance is small enough. */
const DEARER = Array.from({ length: 25 }, (_, i) => 1.15 ** i);

/**
 * Bids for lots that close together where the user allows a chance that they win more than there is: those of lots on their own,
 * with the money's later worth raised for all of them alike until the chance is within what is allowed.
 * @returns for each lot the number of the price bid up to, −1 for none; undefined where no rise is enough
 */
export function bidsByChance(
  lots: readonly Bidding[],
  from: Standpoint,
  room: Room,
  allowed: Allowed,
): readonly number[] | undefined {
  const gains = lots.map(({ points }) => points.prices.map((_, j) => gainAt(points, j, from)));
  for (const times of DEARER) {
    const bids = lots.map(({ points: { chance }, bound, rule }, i) => {
      let [sum, best, at] = [0, 0, -1];
      for (const [j, { gain, worth }] of (gains[i] ?? []).entries()) {
        if (!Number.isFinite(gain)) break;
        const now = gain - (times - 1) * worth;
        sum = rule === 'sealed' ? sum + (chance[j] as number) : sum + (chance[j] as number) * now;
        const value = rule === 'sealed' ? sum * now : sum;
        if (value > best || rule === 'max') [best, at] = [value, j];
      }
      return Math.max(bound, at);
    });
    if (overChance(stakesOf(lots, bids, allowed), allowed.weights, room) <= allowed.chance) return bids;
  }
  return undefined;
}

function stakesOf(lots: readonly Bidding[], bids: readonly number[], { weights }: Allowed): readonly Stake[] {
  return lots.flatMap(({ points, byLevel, rule }, i) => {
    const bid = bids[i] ?? -1;
    if (bid < 0) return [];
    const numbers = Array.from({ length: bid + 1 }, (_, j) => (rule === 'sealed' ? bid : j));
    const ways = numbers.map((j) => bestWay(points.ways, j));
    const amount = (pool: 'cash' | 'line') => numbers.map((j, at) => points.ways[ways[at] ?? 0]?.[pool][j] ?? 0);
    const chances = weights.map((_, level) => Array.from((byLevel?.[level] ?? points.chance).subarray(0, bid + 1)));
    return [{ cash: amount('cash'), line: amount('line'), chances }];
  });
}

function bestWay(ways: Bidding['points']['ways'], j: number): number {
  let best = 0;
  ways.forEach(({ profit }, i) => {
    if ((profit[j] as number) > (ways[best]?.profit[j] ?? 0)) best = i;
  });
  return best;
}

/** What bids earn beyond their money's later worth, each on its own. */
export function worthOfBids(lots: readonly Bidding[], bids: readonly number[], from: Standpoint): number {
  return lots.reduce((sum, { points, rule }, i) => {
    const bid = bids[i] ?? -1;
    if (bid < 0) return sum;
    if (rule === 'sealed') return sum + chanceUpTo(points, bid) * gainAt(points, bid, from).gain;
    let worth = 0;
    for (let j = 0; j <= bid; j++) worth += (points.chance[j] as number) * gainAt(points, j, from).gain;
    return sum + worth;
  }, 0);
}
