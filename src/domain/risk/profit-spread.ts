import { chanceBelow, type Lognormal, meanBelowCap, shortfallBelow } from '../statistics/lognormal.ts';

/** One way things can turn out but for the retail price: profit is then `gain × retail − cost`. */
export interface Case {
  /** Chance of it; all cases together make 1. */
  readonly weight: number;
  /** Share of retail that is kept; 0 where the car is not sold at all. */
  readonly gain: number;
  readonly cost: number;
}

/** Retail as a distribution: lognormal, cut off at what a substitute costs. */
export interface RetailSpread extends Lognormal {
  /** No price above it is ever paid. */
  readonly cap?: number | undefined;
}

/** Mean of retail under its cap. */
export const meanRetail = (retail: RetailSpread): number =>
  retail.cap === undefined ? retail.mean : meanBelowCap(retail, retail.cap);

export function expectedProfit(cases: readonly Case[], retail: RetailSpread): number {
  const mean = meanRetail(retail);
  let sum = 0;
  for (const { weight, gain, cost } of cases) sum += weight * (gain * mean - cost);
  return sum;
}

/**
 * Chance that profit is below `level`, summed over the cases; in each the retail price is integrated in closed form, so
 * there is no sampling and the same question always gets the same answer.
 */
export function chanceOfProfitBelow(level: number, cases: readonly Case[], retail: RetailSpread): number {
  let sum = 0;
  for (const { weight, gain, cost } of cases) {
    const needed = level + cost;
    if (gain === 0) sum += needed > 0 ? weight : 0;
    else sum += weight * retailBelow(retail, needed / gain);
  }
  return sum;
}

function retailBelow(retail: RetailSpread, x: number): number {
  return retail.cap !== undefined && x > retail.cap ? 1 : chanceBelow(retail, x);
}

/** E[(level − profit)⁺]: by how much profit falls short of `level`, on average over everything. */
export function expectedShortfall(level: number, cases: readonly Case[], retail: RetailSpread): number {
  let sum = 0;
  for (const { weight, gain, cost } of cases) {
    const needed = level + cost;
    if (gain === 0) sum += weight * Math.max(0, needed);
    else sum += weight * gain * retailShortfall(retail, needed / gain);
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
export function worstCases(share: number, cases: readonly Case[], retail: RetailSpread, precision: number): WorstCases {
  // Retail is never negative, so no profit lies below the dearest case; going up, doubling finds enough.
  let low = -cases.reduce((most, { cost }) => Math.max(most, cost), 0) - precision;
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
