import { describe, expect, test } from 'vitest';
import type { Closing, Ending } from '../../../src/domain/market/closing.ts';
import { groupKey } from '../../../src/domain/market/market-group.ts';
import { readingOf } from '../../../src/domain/market/reading.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';

const dollars = (amount: number) => cents(amount * 100);
const group = { carClass: 'cargo van', title: '', seller: '', venue: 'v1' };

function closing(ending: Ending, bid?: number): Closing {
  const base = { group, at: instant(0), zeroProfit: dollars(10_000), step: dollars(25), ending };
  return bid === undefined ? base : { ...base, bid: dollars(bid) };
}

describe('a close says of the rivals', () => {
  const lost = (price: number): Ending => ({ was: 'lost', price: dollars(price) });

  test('where we won: the strongest would have paid one step less than we did', () => {
    const reading = readingOf(closing({ was: 'won', price: dollars(9_025) }, 9_500));
    expect(reading).toEqual({ says: 'strongest-at', x: Math.log(0.9) });
  });

  test('where nobody else bid: none would have paid more than the opening bid', () => {
    const reading = readingOf(closing({ was: 'won', price: dollars(9_000), unopposed: true }, 9_500));
    expect(reading).toEqual({ says: 'strongest-below', x: Math.log(0.9) });
  });

  test('where two others went past our bid: what the second of them would pay, not the winner', () => {
    expect(readingOf(closing(lost(11_000), 10_000))).toEqual({ says: 'second-at', x: Math.log(1.1) });
    expect(readingOf(closing(lost(11_000)))).toEqual({ says: 'second-at', x: Math.log(1.1) });
  });

  test.each([11_000, 11_025])('where our bid of $11,000 set the price %i: the second stood below it', (price) => {
    expect(readingOf(closing(lost(price), 11_000))).toEqual({ says: 'between', x: Math.log(1.1) });
  });

  test('where it went for less than our bid: our bid was not in, and we only watched', () => {
    expect(readingOf(closing(lost(9_000), 10_000))).toEqual({ says: 'second-at', x: Math.log(0.9) });
  });

  test('where the price is unknown or the reserve was not met: the strongest is above the highest bid known', () => {
    expect(readingOf(closing({ was: 'lost-unknown' }, 9_000))).toEqual({ says: 'strongest-above', x: Math.log(0.9) });
    const noSale: Ending = { was: 'no-sale', high: dollars(9_500) };
    expect(readingOf(closing(noSale, 9_000))).toEqual({ says: 'strongest-above', x: Math.log(0.95) });
  });

  test('where bids are handed in unseen: the price is the winner’s own bid, and without it only that one was above ours', () => {
    const unseen = (ending: Ending, bid?: number) => readingOf({ ...closing(ending, bid), sealed: true });
    expect(unseen(lost(11_000), 10_000)).toEqual({ says: 'strongest-at', x: Math.log(1.1) });
    expect(unseen({ was: 'lost-unknown' }, 9_000)).toEqual({ says: 'strongest-above', x: Math.log(0.9) });
    expect(unseen({ was: 'won', price: dollars(9_000) }, 9_000)).toEqual({ says: 'strongest-below', x: Math.log(0.9) });
    expect(unseen({ was: 'lost-unknown' })).toBeUndefined();
  });

  test('nothing, where neither a bid nor a price is known, or there is nothing to hold them against', () => {
    expect(readingOf(closing({ was: 'lost-unknown' }))).toBeUndefined();
    expect(readingOf(closing({ was: 'no-sale' }))).toBeUndefined();
    expect(readingOf({ ...closing(lost(9_000)), zeroProfit: cents(0) })).toBeUndefined();
  });
});

test('a group is the same whatever its case and blanks', () => {
  expect(groupKey({ ...group, carClass: ' Cargo Van' })).toBe(groupKey(group));
  expect(groupKey({ ...group, seller: 'dealer' })).not.toBe(groupKey(group));
});
