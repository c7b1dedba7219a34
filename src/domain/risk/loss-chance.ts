import type { CostSpread } from './cost-spread.ts';
import {
  type CostCases,
  chanceOfProfitBelow,
  lossWithin,
  type Outcomes,
  type RetailSpread,
  type Sold,
} from './profit-spread.ts';

/** Blocks that the first looks take in place of single cells, where no doubt splits them. */
const LOOKS = [8, 32];

/**
 * Whether the chance of losing money at a price is at most `most`: the very sum that `riskAt` takes, and mostly from a
 * tenth of its terms. A search asks a dozen times a lot, and a list of thousands of lots asks for every one.
 *
 * The first looks put neighboring cells of the cost grid together at their mean. By Taylor's theorem that is off by at
 * most half the squared distance within the blocks times the largest curvature of the retail distribution; only a
 * chance nearer to `most` than that is looked at more closely, and at last in full.
 */
export function losesAtMost(
  outcomesAt: (price: number) => Outcomes,
  retail: RetailSpread,
  costs: CostSpread,
  most: number,
): (price: number) => boolean {
  const looks = LOOKS.map((blocks) => blocksOf(costs, blocks)).filter(
    ({ chances }) => chances.length * 2 < costs.chances.length,
  );
  const reach = reachOf(costs);
  return (price) => {
    const outcomes = outcomesAt(price);
    const { sold, undone } = outcomes;
    const curvature = curvatureOf(sold, reach, retail);
    for (const blocks of curvature === undefined ? [] : looks) {
      const doubt = (curvature ?? 0) * blocks.spread;
      if (doubt >= 1) continue;
      let roughly = undone.cost > 0 ? undone.weight : 0;
      for (const one of sold) roughly += one.weight * lossWithin(0, one, blocks, retail);
      if (Math.abs(roughly - most) > doubt) return roughly < most;
    }
    return chanceOfProfitBelow(0, outcomes, retail) <= most;
  };
}

interface Blocks extends CostCases {
  /** Average squared distance from the middle within each, weighted with the chances and added up. */
  readonly spread: number;
}

/** The lowest and the highest that costs may come to, of each kind. */
interface Reach {
  readonly recon: readonly [least: number, most: number];
  readonly doubt: readonly [least: number, most: number];
}

function reachOf({ recon, doubt }: CostSpread): Reach {
  const ends = (values: readonly number[]): [number, number] =>
    values.reduce<[number, number]>(([least, most], value) => [Math.min(least, value), Math.max(most, value)], [0, 0]);
  return { recon: ends(recon), doubt: ends(doubt) };
}

/**
 * How far off blocks may be for each squared cent of their spread, or undefined where nothing is known: at a ceiling, or
 * where retail is certain.
 * |F″(x)| = φ(d)·|d + σ| ÷ (σx)² ≤ (0.242 + 0.399σ) ÷ (σx)² for a lognormal F with d = ln(x/m)/σ + σ/2.
 */
function curvatureOf(sold: readonly Sold[], reach: Reach, { sigma, cap }: RetailSpread): number | undefined {
  const gain = sold[0]?.gain ?? 0;
  if (gain === 0 || sigma === 0) return undefined;
  let least = Number.POSITIVE_INFINITY;
  let dearest = 0;
  let times = 0;
  for (const one of sold) {
    times = Math.max(times, one.times);
    least = Math.min(least, one.base + reach.doubt[0] + one.times * reach.recon[0]);
    dearest = Math.max(dearest, one.base + reach.doubt[1] + one.times * reach.recon[1]);
  }
  if (least <= 0 || (cap !== undefined && dearest / gain >= cap)) return undefined;
  const curvature = (0.242 + 0.399 * sigma) / (sigma * (least / gain)) ** 2;
  return 0.5 * curvature * (times / gain) ** 2;
}

/** @param most how many blocks a certain case of doubt gets; a rarer one gets fewer, since it counts for less */
function blocksOf({ chances, recon, doubt, doubts }: CostSpread, most: number): Blocks {
  const cells = Math.ceil(chances.length / doubts.length);
  const chanceOf = new Map(doubts.map(({ cents, chance }) => [cents, chance]));
  const blocks = { chances: [] as number[], recon: [] as number[], doubt: [] as number[] };
  let spread = 0;
  for (let from = 0; from < chances.length; ) {
    const length = Math.ceil(cells / Math.ceil(most * Math.cbrt(chanceOf.get(doubt[from] ?? 0) ?? 1)));
    let to = from;
    let chance = 0;
    let sum = 0;
    // A block never goes on into the next case of doubt.
    for (; to < chances.length && to < from + length && doubt[to] === doubt[from]; to++) {
      chance += chances[to] ?? 0;
      sum += (chances[to] ?? 0) * (recon[to] ?? 0);
    }
    const middle = sum / chance;
    for (let i = from; i < to; i++) spread += (chances[i] ?? 0) * ((recon[i] ?? 0) - middle) ** 2;
    blocks.chances.push(chance);
    blocks.recon.push(middle);
    blocks.doubt.push(doubt[from] ?? 0);
    from = to;
  }
  return { ...blocks, spread };
}
