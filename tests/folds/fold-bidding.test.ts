import { expect, test } from 'vitest';
import { bidStateOf } from '../../src/domain/bid/bid-state-of.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { bidGiven } from '../../src/folds/bid-given.ts';
import { foldLots } from '../../src/folds/fold-lots.ts';
import type { Happening } from '../../src/journal/happening.ts';
import { biddingOf } from '../../src/journal/states/lot-bidding.ts';
import { type BidEvent, BidHistory, dollars } from '../views/lots/bid-history.ts';

const at = (hour: number) => new Date(Date.UTC(2026, 5, 5, hour)).toISOString();
const born: BidEvent = { at: at(0), kind: 'lot-added', close: at(23), increment: 100 };
const price = (hour: number, amount: number, more: Partial<BidEvent> = {}): BidEvent => ({
  at: at(hour),
  kind: 'price-now',
  from: 'page',
  amount,
  ...more,
});
const proxy = (hour: number, amount: number): BidEvent => ({ at: at(hour), kind: 'proxy-placed', amount, by: 'buyer' });

test('every price is kept with the time at which it was seen, and who read or typed it', () => {
  const { lot } = new BidHistory([born, price(1, 9000), price(2, 9500, { from: 'typed' })]);
  expect(biddingOf(lot).prices).toEqual([
    { cents: dollars(9000), seenAt: Date.parse(at(1)), from: 'page' },
    { cents: dollars(9500), seenAt: Date.parse(at(2)), from: 'typed' },
  ]);
});

test('a price that was seen before another and written down after it does not take its place', () => {
  const { lot } = new BidHistory([born, price(3, 10_500), price(4, 9700, { seenAt: at(2) })]);
  expect(lot.facts.priceNow).toBe(dollars(10_500));
  expect(biddingOf(lot).prices.map(({ cents }) => cents)).toEqual([dollars(9700), dollars(10_500)]);
});

test('a lot that came in with a price and a proxy has both from then on, as one that an older Headroom kept does', () => {
  const history = new BidHistory([born]);
  const lot = { ...history.lot, facts: { ...history.lot.facts, priceNow: dollars(9500), proxy: dollars(9000) } };
  const known = biddingOf(lot);
  expect(known.prices).toEqual([{ cents: dollars(9500), seenAt: lot.addedAt, from: 'typed' }]);
  expect(known.bids).toMatchObject([{ action: 'proxy-placed', cents: dollars(9000), at: lot.addedAt }]);
  const state = bidStateOf(bidGiven(lot, { maxBid: dollars(12_000), increments: undefined }), lot.addedAt + 1);
  expect([state.is, state.loud]).toEqual(['outbid', true]);
});

test('undoing a raise brings back the proxy before it, and with it that we are outbid', () => {
  const history = new BidHistory([born, proxy(1, 10_000), price(2, 10_500)]);
  const raise = history.write(
    { kind: 'bid-noted', bid: { action: 'proxy-raised', cents: dollars(12_000), at: instant(Date.parse(at(3))) } },
    instant(Date.parse(at(3))),
  );
  const stateOf = () => {
    const lot = foldLots(history.entries).get(history.lot.id) ?? history.lot;
    return bidStateOf(bidGiven(lot, { maxBid: dollars(12_000), increments: undefined }), Date.parse(at(5))).is;
  };
  expect([history.lot.facts.proxy, stateOf()]).toEqual([dollars(12_000), 'standing']);
  history.write({ kind: 'undone', entry: raise.id }, instant(Date.parse(at(4))));
  expect([history.lot.facts.proxy, stateOf()]).toEqual([dollars(10_000), 'outbid']);
});

test('a lower price of a page is in doubt until a person has taken it', () => {
  const history = new BidHistory([born, proxy(1, 10_000), price(2, 10_500), price(3, 9800)]);
  const look = () =>
    bidStateOf(bidGiven(history.lot, { maxBid: dollars(12_000), increments: undefined }), Date.parse(at(5)));
  expect([look().is, look().asks.map(({ ask }) => ask)]).toEqual(['outbid', ['which-price']]);
  const evidence = { priceNow: { from: 'page-text', text: '9,700', sure: 'certain' } } as const;
  const taken: Happening = {
    kind: 'lot-changed',
    set: { priceNow: dollars(9700) },
    clear: [],
    evidence,
    confirmed: true,
  };
  history.write(taken, instant(Date.parse(at(4))));
  expect([look().is, look().asks]).toEqual(['standing', []]);
});

test('a price that is emptied was never seen', () => {
  const history = new BidHistory([born, proxy(1, 10_000), price(2, 10_500)]);
  history.write({ kind: 'lot-changed', set: {}, clear: ['priceNow'], evidence: {} }, instant(Date.parse(at(3))));
  expect(biddingOf(history.lot).prices).toEqual([]);
  expect(biddingOf(history.lot).bids).toHaveLength(1);
});

test('two results of two browsers are in doubt until one of them names the other', () => {
  const history = new BidHistory([born, { at: at(23), kind: 'result', outcome: 'won', amount: 11_400, by: 'manager' }]);
  const later = instant(Date.parse(at(23)) + 1000);
  const lost = { kind: 'result-noted', result: { ended: 'lost' }, at: later } as const;
  history.write(lost, later, 'buyer');
  expect(history.lot.sale?.otherResult?.result.ended).toBe('won');
  const { entry } = history.lot.sale?.result ?? {};
  history.write({ ...lost, ...(entry !== undefined && { corrects: entry }) }, later, 'buyer');
  expect(history.lot.sale?.otherResult).toBeUndefined();
});

test('time that the sale adds after a loss was noted brings the lot back, and a win that was noted stays', () => {
  const ended = (outcome: string, amount: number) => {
    const history = new BidHistory([
      born,
      proxy(1, 10_000),
      { at: at(23), kind: 'result', outcome, amount, by: 'buyer' },
    ]);
    const from = instant(Date.parse(at(23)));
    history.write({ kind: 'close-extended', from, minutes: 15 }, instant(from + 60_000));
    return history.lot.sale?.result?.result.ended;
  };
  expect(ended('lost', 10_500)).toBeUndefined();
  expect(ended('won', 9500)).toBe('won');
});
