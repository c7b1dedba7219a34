import { expect, test } from 'vitest';
import type { BidGiven, BidState } from '../../../src/domain/bid/bid-state.ts';
import { bidStateOf } from '../../../src/domain/bid/bid-state-of.ts';
import type { OwnBid, PriceSeen } from '../../../src/domain/bid/bidding.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { greatestNeed, needOf, wantsAct } from '../../../src/domain/week/closing-need.ts';

const CLOSE = instant(100_000);
const money = (dollars: number): Cents => cents(dollars * 100);
const proxy = (dollars: number): OwnBid => ({
  action: 'proxy-placed',
  cents: money(dollars),
  at: instant(10),
  by: 'buyer',
});
const price = (dollars: number): PriceSeen => ({ cents: money(dollars), seenAt: instant(20), from: 'page' });

/** A lot with a max bid of $12,000, as it stands a while before its close unless the test says otherwise. */
function bid(bids: readonly OwnBid[], prices: readonly PriceSeen[], more: Partial<BidGiven> = {}, now = 50): BidState {
  const given: BidGiven = {
    bidding: { bids, prices, accepted: [] },
    sealed: false,
    maxBid: money(12_000),
    increments: [{ fromCents: money(0), stepCents: money(100) }],
    close: { first: CLOSE, last: CLOSE },
    canceled: false,
    ...more,
  };
  return bidStateOf(given, now);
}
const calm = { inRush: false, offHands: false };
const rush = { inRush: true, offHands: false };

test('what wants an act is the danger in the busy hours, and outside them what it is', () => {
  const wanting: readonly (readonly [BidState, string])[] = [
    [bid([], [price(9000)]), 'bare'],
    [bid([proxy(10_000)], [price(10_600)]), 'outbid'],
    [bid([proxy(12_400)], [price(9000)]), 'over-max'],
    [bid([proxy(10_000)], [price(10_000)]), 'check'],
  ];
  for (const [state, need] of wanting) {
    expect(needOf({ bid: state, ...calm })).toBe(need);
    expect(needOf({ bid: state, ...rush })).toBe('danger');
    expect(needOf({ bid: state, inRush: true, offHands: true })).toBe(need);
    expect(wantsAct(needOf({ bid: state, ...calm }))).toBe(true);
  }
});

test('what stands or can’t be reached any more is no danger, in the busy hours or out of them', () => {
  expect(needOf({ bid: bid([proxy(12_000)], [price(9000)]), ...rush })).toBe('placed');
  expect(needOf({ bid: bid([proxy(10_000)], [price(13_000)]), ...rush })).toBe('past-stop');
  expect(needOf({ bid: bid([], [price(13_000)]), ...rush })).toBe('past-stop');
  expect(needOf({ bid: bid([], [], { maxBid: null }), ...rush })).toBe('past-stop');
});

test('what has closed needs its result, whatever was placed, until it is there', () => {
  expect(needOf({ bid: bid([proxy(10_000)], [], {}, CLOSE), ...calm })).toBe('unsaid');
  const result = { result: { ended: 'lost' as const }, at: CLOSE };
  expect(needOf({ bid: bid([proxy(10_000)], [], { result }, CLOSE), ...calm })).toBe('over');
});

test('a pile is as urgent as the most urgent in it', () => {
  expect(greatestNeed(['over', 'bare', 'danger', 'placed'])).toBe('danger');
  expect(greatestNeed(['bare', 'outbid', 'placed'])).toBe('outbid');
  expect(greatestNeed(['placed', 'over'])).toBe('placed');
  expect(greatestNeed([])).toBe('over');
});
