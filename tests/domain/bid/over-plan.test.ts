import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { BidGiven } from '../../../src/domain/bid/bid-state.ts';
import { openBid } from '../../../src/domain/bid/bid-state-of.ts';
import { bidWords } from '../../../src/domain/bid/bid-words.ts';
import { overStop, stopOf } from '../../../src/domain/bid/stop-of.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { bidOffer, otherOffers } from '../../../src/views/lots/act-offers.ts';
import { newsOfBid } from '../../../src/views/lots/bid-news.ts';

const dollars = (amount: number): Cents => cents(amount * 100);
const at = instant(1_790_000_000_000);

/** A proxy of ours, a price seen after it, and what both are held against. */
function given(money: Pick<BidGiven, 'maxBid' | 'planned'>, proxy: number | null, price?: number): BidGiven {
  return {
    ...money,
    bidding: {
      bids: proxy === null ? [] : [{ action: 'proxy-placed', cents: dollars(proxy), at, by: 'buyer' }],
      prices: price === undefined ? [] : [{ cents: dollars(price), seenAt: instant(at + 1), from: 'page' }],
      accepted: [],
    },
    sealed: false,
    increments: [{ fromCents: cents(0), stepCents: dollars(25) }],
    close: { first: instant(at + 9e9), last: instant(at + 9e9) },
    canceled: false,
  };
}
const stateOf = (one: BidGiven) => openBid(one, at);

test('a proxy that the plan has fallen below is over plan and loud, and the plan’s bid is what it is to be cut to', () => {
  const state = stateOf(given({ maxBid: dollars(10_000), planned: dollars(9000) }, 9800, 7000));
  expect(state).toMatchObject({ is: 'over-max', than: 'plan', loud: true, by: dollars(800), maxBid: dollars(9000) });
  expect(bidWords(state)).toBe('Placed $9,800, $800 over plan');
});

test('it is told like any other news of a bid, offers the cut and to ignore the plan, and is told anew when the plan moves', () => {
  const lot = { id: 'L' as LotId, changedAt: at };
  const state = stateOf(given({ maxBid: dollars(10_000), planned: dollars(9000) }, 9800, 7000));
  const news = newsOfBid(lot, state);
  expect(news).toMatchObject({
    title: 'placed $9,800, $800 over plan',
    body: 'Cut it to $9,000 or ignore the plan for it.',
  });
  expect(bidOffer(state, dollars(9000))).toEqual({ do: 'bid', verb: 'cut', cents: dollars(9000) });
  expect(otherOffers(state).map(({ act }) => act)).toEqual([{ do: 'plan', choice: 'plan-ignored' }]);
  const lower = newsOfBid(lot, stateOf(given({ maxBid: dollars(10_000), planned: dollars(8000) }, 9800, 7000)));
  expect(lower?.key).not.toBe(news?.key);
});

test('a bid that is over both is over max: that comes first', () => {
  const state = stateOf(given({ maxBid: dollars(10_000), planned: dollars(10_000) }, 10_500, 7000));
  expect(bidWords(state)).toBe('Placed $10,500, $500 over max');
});

test('a bid that is a little over plan is not called over: the plan moves a little with every result', () => {
  expect(bidWords(stateOf(given({ maxBid: dollars(10_000), planned: dollars(9700) }, 9850, 7000)))).toBe(
    'Placed $9,850',
  );
  expect(stateOf(given({ maxBid: dollars(10_000), planned: dollars(9600) }, 9850, 7000)).is).toBe('over-max');
});

test('a proxy on a lot that the plan leaves out says so', () => {
  const state = stateOf(given({ maxBid: dollars(10_000), planned: null }, 9000, 7000));
  expect(state).toMatchObject({ is: 'over-max', than: 'plan', by: null, maxBid: null });
  expect(bidWords(state)).toBe('Placed $9,000, left out of the plan');
});

test('a price past the plan leaves no room, though it is below the max bid', () => {
  const money = { maxBid: dollars(10_000), planned: dollars(9000) };
  expect(bidWords(stateOf(given(money, null, 9300)))).toBe('Price $300 over plan');
  expect(bidWords(stateOf(given(money, 8800, 9300)))).toBe('Outbid at $9,300, above plan: don’t chase');
  expect(stateOf(given(money, 8800, 9300)).loud).toBe(false);
  expect(bidWords(stateOf(given({ ...money, planned: null }, null, 5000)))).toBe('Left out of the plan');
});

test('without a plan, or with one at max, every state is as it would be without it', () => {
  const amount = fc.integer({ min: 0, max: 500 }).map((steps) => steps * 25);
  fc.assert(
    fc.property(amount, fc.option(amount), fc.option(amount), (max, proxy, price) => {
      const bare = given({ maxBid: dollars(max) }, proxy === 0 ? 25 : proxy, price ?? undefined);
      const state = stateOf(bare);
      expect(stateOf({ ...bare, planned: undefined })).toEqual(state);
      expect(stateOf({ ...bare, planned: dollars(max) })).toEqual(state);
      expect(stateOf({ ...bare, planned: dollars(max + 500) })).toEqual(state);
    }),
  );
});

test('a plan says nothing of a lot whose max bid is gone', () => {
  expect(stopOf({ maxBid: undefined, planned: dollars(9000) })).toEqual({ at: undefined, than: 'max' });
  expect(stopOf({ maxBid: null, planned: dollars(9000) })).toEqual({ at: null, than: 'max' });
  expect(overStop(dollars(9000), { at: undefined, than: 'max' })).toBe(0);
});
