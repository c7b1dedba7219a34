import type { Closing } from '../../../src/domain/market/closing.ts';
import type { Market } from '../../../src/domain/market/market.ts';
import type { MarketGroup } from '../../../src/domain/market/market-group.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import type { PlanLot } from '../../../src/domain/plan/plan-lot.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { Dice } from '../../reader/dice.ts';

/**
 * How rivals really bid, which the model does not know: any number of them from 2 to 15, limits that share what is good or bad
 * about a lot, and a weekend that runs high or low for all lots. The model takes five, apart from one another.
 */
export interface Truth {
  /** How high the usual rival's limit lies against our zero-profit hammer, in logarithms. */
  readonly middle: number;
  /** How far prices of the weekend lie above those of the closings that were learned from: 0.05 is 5%. */
  readonly off: number;
  /** Standard deviation of each weekend's own level. */
  readonly weekendSd: number;
}

/** A lot as it will go, if we let it. */
export interface TrueLot {
  readonly lot: PlanLot;
  /** The strongest and the second strongest rival's limits; whole cents. */
  readonly strongest: number;
  readonly second: number;
  /** All-in beside the hammer price; whole cents. */
  readonly costs: number;
  /** How high prices of its weekend run, in logarithms. */
  readonly level: number;
}

export const GROUP: MarketGroup = { carClass: 'van', title: '', seller: '', venue: 'v1' };
export const STEP = cents(10_000);
const RIVAL_SD = 0.1;
const LOT_SD = 0.06;
const LEAST_PROFIT = 150_000;

/** The two highest of the rivals' limits for a car that we would earn nothing on at `zeroProfit`. */
function limits(
  dice: Dice,
  { middle }: Truth,
  level: number,
  zeroProfit: number,
): { strongest: number; second: number } {
  const rivals = dice.whole(2, 15);
  const shared = middle + level + LOT_SD * bell(dice);
  let [strongest, second] = [0, 0];
  for (let i = 0; i < rivals; i++) {
    const limit = zeroProfit * Math.exp(shared + RIVAL_SD * bell(dice));
    if (limit > strongest) [strongest, second] = [limit, strongest];
    else if (limit > second) second = limit;
  }
  return { strongest, second };
}

/** A standard normal throw, by the method of Box and Muller. */
export function bell(dice: Dice): number {
  return Math.sqrt(-2 * Math.log(1 - dice.fraction())) * Math.cos(2 * Math.PI * dice.fraction());
}

/** Closings of earlier weekends to learn from, at instant 0: some won, most lost, every fifth without a price. */
export function pastClosings(dice: Dice, truth: Truth, count: number): readonly Closing[] {
  return Array.from({ length: count }, () => {
    const { lot, strongest, second } = trueLot(dice, truth, 0, 0);
    return { ...closingOf(lot, lot.maxBid ?? STEP, strongest, second, dice.happens(0.2)), at: instant(0) };
  });
}

/** The lots of one weekend, twenty minutes apart. */
export function weekendLots(dice: Dice, truth: Truth, count: number): readonly TrueLot[] {
  const level = Math.log(1 + truth.off) + truth.weekendSd * bell(dice);
  return Array.from({ length: count }, (_, i) => trueLot(dice, truth, level, i));
}

export function trueLot(dice: Dice, truth: Truth, level: number, i: number): TrueLot {
  const zeroProfit = dice.whole(60, 160) * 10_000;
  const costs = dice.whole(6, 12) * 10_000;
  const lot: PlanLot = {
    id: String(i),
    name: `Lot ${i}`,
    close: instant((i + 1) * 1_200_000),
    maxBid: cents(zeroProfit - LEAST_PROFIT),
    increments: [{ fromCents: cents(0), stepCents: STEP }],
    zeroProfit: cents(zeroProfit),
    waysAt: (price) => [{ pool: 'cash', cash: price + costs, line: 0, profit: zeroProfit - price }],
    group: GROUP,
  };
  return { lot, costs, level, ...limits(dice, truth, level, zeroProfit) };
}

/** Draws that the true odds are counted from. */
const DRAWS = 20_000;

/**
 * Markets as somebody sees them who knows the true odds and the weekend's level: nothing that is seen teaches him more.
 * @returns the market of a weekend by its level
 */
export function knownMarkets(truth: Truth): (level: number) => Market {
  const dice = new Dice(11);
  const tops = Float64Array.from({ length: DRAWS }, () => Math.log(limits(dice, truth, 0, 1).strongest)).sort();
  return (level) => {
    const curve = { below: (x: number) => countUpTo(tops, x - level) / tops.length };
    const market: Market = {
      level: { mean: level, sd: 0, closings: 0 },
      curveOf: () => curve,
      closingsOf: () => Number.POSITIVE_INFINITY,
      levels: () => [{ level, chance: 1, curveOf: () => curve }],
      after: () => market,
    };
    return market;
  };
}

/** How many of rising numbers are at or below `x`. */
function countUpTo(rising: Float64Array, x: number): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] as number) <= x) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** What we would have to pay to win: one step over the strongest rival's last bid. */
export const priceToWin = (strongest: number): Cents => cents((Math.floor(strongest / STEP) + 1) * STEP);

/** How a lot ends with a bid of ours on it, or none. */
export function closingOf(
  { group, close, zeroProfit }: PlanLot,
  bid: Cents | null,
  strongest: number,
  second: number,
  hidden = false,
): Closing {
  const base = { group, at: close ?? instant(0), zeroProfit, step: STEP, ...(bid !== null && { bid }) };
  if (bid !== null && bid >= strongest)
    return { ...base, ending: { was: 'won', price: cents(Math.min(bid, priceToWin(strongest))) } };
  if (hidden) return { ...base, ending: { was: 'lost-unknown' } };
  // The strongest pays one step over whoever stood against him last: the second, or our bid.
  const against = Math.max(second, bid ?? 0);
  const sets = bid !== null && bid >= second;
  return { ...base, ending: { was: 'lost', price: sets ? cents(bid + STEP) : cents(Math.floor(against)) } };
}
