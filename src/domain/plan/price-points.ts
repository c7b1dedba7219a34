import type { RivalCurve } from '../market/rival-curve.ts';
import type { Cents } from '../money/cents.ts';
import { nextPrice, priceGrid } from '../price/price-grid.ts';
import type { PlanLot } from './plan-lot.ts';

/** One way to pay, at each of a lot's price points. Whole cents at single prices, means where points were joined. */
export interface WayAtPoints {
  readonly cash: Float64Array;
  readonly line: Float64Array;
  readonly profit: Float64Array;
}

/** The prices a lot may be won at, and how likely each is. */
export interface PricePoints {
  /** Prices on the sale's increments, rising; the last is the max bid, or a proxy above it. */
  readonly prices: readonly Cents[];
  /** Chance to have to pay exactly this price, if the bid is at least as high. */
  readonly chance: Float64Array;
  readonly ways: readonly WayAtPoints[];
  /** Profit falls and money rises with the price, so that whoever takes a price takes every lower one. */
  readonly falling: boolean;
}

/** More prices than this are looked at in strides; the bid is still found on the increments. */
const MOST_POINTS = 240;
/** Lower prices than this chance reaches are as good as impossible. */
const NEVER = 1e-5;

/**
 * The prices from the lowest that the sale can still land on to the max bid, or to a proxy above it.
 * @returns undefined when no price is left at or below the max bid
 */
export function pricePoints(lot: PlanLot, curve: RivalCurve): PricePoints | undefined {
  const prices = pricesOf(lot, curve);
  if (prices.length === 0) return undefined;
  const chance = chancesOf(lot, curve, prices);
  const atEach = prices.map((price) => lot.waysAt(price));
  const count = Math.min(...atEach.map((ways) => ways.length));
  const ways = Array.from({ length: count }, (_, way) => ({
    cash: Float64Array.from(atEach, (at) => at[way]?.cash ?? 0),
    line: Float64Array.from(atEach, (at) => at[way]?.line ?? 0),
    profit: Float64Array.from(atEach, (at) => at[way]?.profit ?? 0),
  }));
  return { prices, chance, ways, falling: ways.every(isFalling) };
}

/** Chance to have to pay each price. Where the strongest rival would stop between two prices, the higher of the two is paid. */
export function chancesOf(lot: PlanLot, curve: RivalCurve, prices: readonly Cents[]): Float64Array {
  const below = belowOf(lot, curve);
  let before = 0;
  return Float64Array.from(prices, (price) => {
    const now = Math.max(before, below(price));
    const chance = now - before;
    before = now;
    return chance;
  });
}

/** Chance that a bid at a price wins, given what the price now says of the strongest rival: he is at or above it. */
export function belowOf({ zeroProfit, priceNow, leading }: PlanLot, curve: RivalCurve): (price: number) => number {
  const plain = (price: number): number => (price > 0 ? curve.below(Math.log(price / zeroProfit)) : 0);
  const now = priceNow === undefined || leading ? 0 : plain(priceNow);
  if (now > 0.999_999) return () => 0;
  return (price) => Math.max(0, (plain(price) - now) / (1 - now));
}

function pricesOf(lot: PlanLot, curve: RivalCurve): readonly Cents[] {
  const { maxBid, increments, priceNow, leading, proxy } = lot;
  const top = Math.max(maxBid ?? 0, proxy ?? 0);
  if (maxBid === null && proxy === undefined) return [];
  const grid = priceGrid(increments, top);
  const start = priceNow === undefined ? 1 : leading ? priceNow : nextPrice(increments, priceNow);
  const below = belowOf(lot, curve);
  let first = grid.indexFrom(start);
  while (first < grid.size - 1 && below(grid.priceAt(first)) < NEVER) first++;
  const stride = Math.ceil((grid.size - first) / MOST_POINTS);
  const prices: Cents[] = [];
  // Counted down from the highest, which must be among them.
  for (let i = grid.size - 1; i >= first; i -= stride) prices.push(grid.priceAt(i));
  return prices.reverse();
}

function isFalling({ cash, line, profit }: WayAtPoints): boolean {
  for (let i = 1; i < profit.length; i++) {
    if ((profit[i] as number) > (profit[i - 1] as number)) return false;
    if ((cash[i] as number) < (cash[i - 1] as number) || (line[i] as number) < (line[i - 1] as number)) return false;
  }
  return true;
}
