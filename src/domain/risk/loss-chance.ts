import type { HoldCase } from '../carrying/hold-spread.ts';
import { type DealTotals, type PriceSums, sumsAt } from '../deal/price-sums.ts';
import { PPM } from '../money/rate.ts';
import { chanceBelow } from '../statistics/lognormal.ts';
import type { CostGrid } from './cost-grid.ts';
import { meanRetail, type RetailSpread } from './profit-spread.ts';

/** Cells rarer than this are left out; together they could not move a chance by a millionth. */
export const RAREST_CELL = 1e-10;

/** Uncertain costs beyond their mean, in cents, with their chances. */
interface Overruns {
  readonly chances: readonly number[];
  readonly cents: readonly number[];
  /** Average squared distance from `cents` within each, weighted with the chances and added up. */
  readonly spread: number;
}

/** Blocks that a first look takes in place of single cells. */
const BLOCKS = 8;

/**
 * Whether the chance of losing money at a price is at most `most`: the very sum that `riskAt` takes over its list of
 * cases, without making the list, and mostly from a tenth of its terms. A search asks a dozen times a lot, and a list
 * of thousands of lots asks for every one.
 *
 * The first look puts neighboring cells of the cost grid together at their mean. By Taylor's theorem that is off by at
 * most half the squared distance within the blocks times the largest curvature of the retail distribution; only a
 * chance nearer to `most` than that is worked out in full.
 */
export function losesAtMost(
  totals: DealTotals,
  retail: RetailSpread,
  grid: CostGrid,
  hold: readonly HoldCase[],
  most: number,
): (price: number) => boolean {
  const { deal } = totals;
  const mean = meanRetail(retail);
  // A what-if moves the deal's retail; its spread moves along, in proportion.
  const gain = mean === 0 ? 0 : (deal.titleKeeps / PPM) * (deal.retail / mean);
  const cells = cellsOf(grid);
  const blocks = blocksOf(cells);
  const undoneLoses = (price: number) => deal.unwind.fixed + price * (deal.unwind.rate / PPM) > 0;
  const undone = deal.unwind.chance / PPM;
  return (price) => {
    const sums = sumsAt(totals, price);
    const chanceFrom = (overruns: Overruns) => {
      let sum = 0;
      for (const one of hold)
        sum += one.chance * loses(baseOf(totals, sums, one), 1 + one.cash, overruns, retail, gain);
      return (1 - undone) * sum + (undoneLoses(price) ? undone : 0);
    };
    const doubt = doubtOf(totals, sums, hold, cells, blocks, retail, gain);
    if (doubt < 1) {
      const roughly = chanceFrom(blocks);
      if (Math.abs(roughly - most) > doubt) return roughly < most;
    }
    return chanceFrom(cells) <= most;
  };
}

function baseOf({ costs, transport }: DealTotals, sums: PriceSums, one: HoldCase): number {
  return costs + sums.allIn - transport + sums.financed * one.floor + sums.cash * one.cash + one.flat;
}

/** Chance that retail does not cover `base` and the overruns, each `times` its amount. */
function loses(base: number, times: number, overruns: Overruns, retail: RetailSpread, gain: number): number {
  const { cents, chances } = overruns;
  let sum = 0;
  for (let i = 0; i < cents.length; i++) {
    const cost = base + (cents[i] ?? 0) * times;
    sum += (chances[i] ?? 0) * (gain === 0 ? (cost > 0 ? 1 : 0) : retailBelow(retail, cost / gain));
  }
  return sum;
}

function retailBelow(retail: RetailSpread, needed: number): number {
  return retail.cap !== undefined && needed > retail.cap ? 1 : chanceBelow(retail, needed);
}

/**
 * How far off the blocks may be, or 1 where nothing is known: at a ceiling, or where retail is certain.
 * |F″(x)| = φ(d)·|d + σ| ÷ (σx)² ≤ (0.242 + 0.399σ) ÷ (σx)² for a lognormal F with d = ln(x/m)/σ + σ/2.
 */
function doubtOf(
  totals: DealTotals,
  sums: PriceSums,
  hold: readonly HoldCase[],
  cells: Overruns,
  blocks: Overruns,
  { sigma, cap }: RetailSpread,
  gain: number,
): number {
  if (gain === 0 || sigma === 0 || blocks.cents.length === cells.cents.length) return 1;
  let least = Number.POSITIVE_INFINITY;
  let dearest = 0;
  let times = 0;
  for (const one of hold) {
    const base = baseOf(totals, sums, one);
    least = Math.min(least, base + (cells.cents[0] ?? 0) * (1 + one.cash));
    dearest = Math.max(dearest, base + (cells.cents.at(-1) ?? 0) * (1 + one.cash));
    times = Math.max(times, 1 + one.cash);
  }
  if (least <= 0 || (cap !== undefined && dearest / gain >= cap)) return 1;
  const curvature = (0.242 + 0.399 * sigma) / (sigma * (least / gain)) ** 2;
  return 0.5 * curvature * blocks.spread * (times / gain) ** 2;
}

function cellsOf({ weights, step, mean }: CostGrid): Overruns {
  const chances: number[] = [];
  const cents: number[] = [];
  weights.forEach((chance, k) => {
    if (chance < RAREST_CELL) return;
    chances.push(chance);
    cents.push(k * step - mean);
  });
  return { chances, cents, spread: 0 };
}

function blocksOf(cells: Overruns): Overruns {
  const length = Math.ceil(cells.cents.length / BLOCKS);
  if (length < 2) return cells;
  const chances: number[] = [];
  const cents: number[] = [];
  let spread = 0;
  for (let from = 0; from < cells.cents.length; from += length) {
    const values = cells.cents.slice(from, from + length);
    const weights = cells.chances.slice(from, from + length);
    const chance = weights.reduce((sum, weight) => sum + weight, 0);
    const middle = values.reduce((sum, value, i) => sum + value * (weights[i] ?? 0), 0) / chance;
    spread += values.reduce((sum, value, i) => sum + (weights[i] ?? 0) * (value - middle) ** 2, 0);
    chances.push(chance);
    cents.push(middle);
  }
  return { chances, cents, spread };
}
