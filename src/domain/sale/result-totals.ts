import { type Cents, cents } from '../money/cents.ts';
import type { Result } from './result.ts';
import type { Review } from './review.ts';

/** What many results come to. */
export interface ResultTotals {
  readonly count: number;
  /** Won, and the sale stands. */
  readonly won: number;
  /** The hammer prices of those, before fees and everything else. */
  readonly hammer: Cents;
  /** Won, and the sale was canceled since. */
  readonly canceled: number;
  readonly lost: number;
  /** Of the lost ones, those whose price is known beside our max bid of that moment. */
  readonly compared: number;
  /** Of those, how many we would still have bought by our own rule. */
  readonly withinReach: number;
  /** Of those that went past our max bid, by how much on average; null when none did. */
  readonly averageOver: Cents | null;
  readonly pending: number;
  readonly notSold: number;
  /** Withdrawn, and not watched. */
  readonly other: number;
}

/** A result, held against the max bid of its moment. */
export interface CountedResult {
  readonly result: Result;
  readonly review: Review;
  /** The sale was canceled after the hammer, so nothing was bought. */
  readonly canceled: boolean;
}

/** Adds results up. The order does not matter; whole cents throughout, and the average rounded once, half up. */
export function totalResults(rows: Iterable<CountedResult>): ResultTotals {
  const by = { won: 0, lost: 0, 'not-sold': 0, pending: 0, withdrawn: 0, 'not-watched': 0 };
  let [hammer, canceled] = [0, 0];
  let compared = 0;
  let withinReach = 0;
  let over = 0;
  let overSum = 0;
  for (const { result, review, canceled: isCanceled } of rows) {
    if (isCanceled) {
      canceled += 1;
      continue;
    }
    by[result.ended] += 1;
    if (result.ended === 'won') hammer += result.hammerCents;
    if (result.ended !== 'lost' || review.wouldHavePaid === undefined) continue;
    compared += 1;
    if (review.wouldHavePaid) withinReach += 1;
    else if (review.overMax !== undefined && review.overMax > 0) {
      over += 1;
      overSum += review.overMax;
    }
  }
  return {
    count: Object.values(by).reduce((sum, n) => sum + n, canceled),
    won: by.won,
    hammer: cents(hammer),
    canceled,
    lost: by.lost,
    compared,
    withinReach,
    averageOver: over === 0 ? null : cents(Math.floor(overSum / over + 0.5)),
    pending: by.pending,
    notSold: by['not-sold'],
    other: by.withdrawn + by['not-watched'],
  };
}
