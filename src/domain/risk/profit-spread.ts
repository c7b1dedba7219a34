import { chanceBelow, type Lognormal, meanBelowCap, shortfallBelow } from '../statistics/lognormal.ts';
import type { CostSpread } from './cost-spread.ts';

/** One stretch of time in which the car may sell: profit is then `gain × retail − base − doubt − times × recon`. */
export interface Sold {
  /** Chance of it; all stretches, and what comes undone, together make 1. */
  readonly weight: number;
  /** Share of retail that is kept; 0 for a car that brings nothing. */
  readonly gain: number;
  /** All that does not depend on the uncertain costs, with what the deal counts for them. */
  readonly base: number;
  /** What each cent of recon costs until then: 1 and its interest. */
  readonly times: number;
}

/** Every way things can turn out but for the retail price. */
export interface Outcomes {
  readonly sold: readonly Sold[];
  /** The same day by day, for the jump at a ceiling; `sold` where it is left out. */
  readonly byDay?: readonly Sold[] | undefined;
  readonly costs: CostSpread;
  /** The sale comes undone: nothing is sold, and this much is lost. */
  readonly undone: { readonly weight: number; readonly cost: number };
}

/** Retail as a distribution: lognormal, cut off at what a substitute costs. */
export interface RetailSpread extends Lognormal {
  /** No price above it is ever paid. */
  readonly cap?: number | undefined;
}

/** Mean of retail under its cap. */
export const meanRetail = (retail: RetailSpread): number =>
  retail.cap === undefined ? retail.mean : meanBelowCap(retail, retail.cap);

export function expectedProfit({ sold, costs, undone }: Outcomes, retail: RetailSpread): number {
  const mean = meanRetail(retail);
  let sum = -undone.weight * undone.cost;
  for (const { weight, gain, base, times } of sold) {
    sum += weight * (gain * mean - meanOver(costs, times, (over) => base + over));
  }
  return sum;
}

/**
 * Chance that profit is below `level`; the retail price is integrated in closed form, so there is no sampling and the
 * same question always gets the same answer.
 *
 * Under a ceiling the chance jumps to 1 at the cost that even the ceiling does not cover, and a grid of costs meets the
 * jump only by luck. So the integral is split there: retail at most the ceiling over the grid, which is continuous, and
 * the chance of reaching the ceiling times the chance of costs above it, which is exact.
 */
export function chanceOfProfitBelow(level: number, outcomes: Outcomes, retail: RetailSpread): number {
  const { sold, byDay = sold, costs, undone } = outcomes;
  let sum = undone.cost > -level ? undone.weight : 0;
  for (const one of sold) sum += one.weight * lossWithin(level, one, costs, retail);
  return sum + chanceOverCeiling(level, byDay, costs, retail);
}

/** Cases of costs: {@link CostSpread} has all of them, a first look takes blocks of them together. */
export type CostCases = Pick<CostSpread, 'chances' | 'recon' | 'doubt'>;

/** Chance that retail, were it no higher than the ceiling, falls short. */
export function lossWithin(level: number, { gain, base, times }: Sold, costs: CostCases, retail: RetailSpread): number {
  const cap = retail.cap ?? Number.POSITIVE_INFINITY;
  return meanOver(costs, times, (over) => {
    const needed = level + base + over;
    if (gain === 0) return needed > 0 ? 1 : 0;
    return chanceBelow(retail, Math.min(cap, needed / gain));
  });
}

/** Chance that retail reaches the ceiling and costs are above even that. */
export function chanceOverCeiling(
  level: number,
  days: readonly Sold[],
  { doubts, reconAbove }: CostSpread,
  retail: RetailSpread,
): number {
  const { cap } = retail;
  if (cap === undefined) return 0;
  let sum = 0;
  for (const { weight, gain, base, times } of days) {
    if (gain === 0) continue;
    for (const { cents, chance } of doubts) {
      sum += weight * chance * reconAbove((gain * cap - level - base - cents) / times);
    }
  }
  return sum * (1 - chanceBelow(retail, cap));
}

/** E[(level − profit)⁺]: by how much profit falls short of `level`, on average over everything. */
export function expectedShortfall(level: number, { sold, costs, undone }: Outcomes, retail: RetailSpread): number {
  let sum = undone.weight * Math.max(0, level + undone.cost);
  for (const { weight, gain, base, times } of sold) {
    const short = (needed: number) =>
      gain === 0 ? Math.max(0, needed) : gain * retailShortfall(retail, needed / gain);
    sum += weight * meanOver(costs, times, (over) => short(level + base + over));
  }
  return sum;
}

/** The mean of a figure of what uncertain costs come to, with recon `times` its amount. */
function meanOver({ chances, recon, doubt }: CostCases, times: number, figure: (over: number) => number): number {
  let sum = 0;
  for (let i = 0; i < chances.length; i++) {
    sum += (chances[i] ?? 0) * figure((doubt[i] ?? 0) + times * (recon[i] ?? 0));
  }
  return sum;
}

function retailShortfall(retail: RetailSpread, x: number): number {
  const { cap } = retail;
  return cap !== undefined && x > cap ? x - cap + shortfallBelow(retail, cap) : shortfallBelow(retail, x);
}

/** Where the worst cases begin, and what they come to on average. */
export interface WorstCases {
  /** Profit is below it with the chance asked for (value at risk). */
  readonly begin: number;
  /** Average profit of those (Rockafellar & Uryasev 2000, theorem 1: begin − E[(begin − profit)⁺] ÷ share). */
  readonly average: number;
}

/**
 * The worst `share` of all outcomes, found by bisection.
 * @param share above 0 and below 1; a tenth is "the worst 1 in 10"
 * @param precision how close `begin` must be, in the unit of money
 */
export function worstCases(share: number, cases: Outcomes, retail: RetailSpread, precision: number): WorstCases {
  // Retail is never negative, so no profit lies below the dearest case; going up, doubling finds enough.
  let low = -dearest(cases) - precision;
  let reach = Math.max(retail.mean, precision);
  while (chanceOfProfitBelow(low + reach, cases, retail) < share) reach *= 2;
  let high = low + reach;
  while (high - low > precision) {
    const middle = (low + high) / 2;
    if (chanceOfProfitBelow(middle, cases, retail) < share) low = middle;
    else high = middle;
  }
  return { begin: high, average: high - expectedShortfall(high, cases, retail) / share };
}

function dearest({ sold, costs: { recon, doubt }, undone }: Outcomes): number {
  const over = (times: number) => recon.reduce((most, cents, i) => Math.max(most, (doubt[i] ?? 0) + times * cents), 0);
  return sold.reduce((most, { base, times }) => Math.max(most, base + over(times)), Math.max(0, undone.cost));
}
