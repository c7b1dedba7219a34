import { expect, test } from 'vitest';
import { compareOn } from '../../scripts/plan/weekends/compare.ts';
import { closingOf, knownMarkets, pastClosings, weekendLots } from '../../scripts/plan/weekends/weekend.ts';
import { Dice } from '../../scripts/reader/dice.ts';
import { marketOf } from '../../src/domain/market/market.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { instant } from '../../src/domain/time/instant.ts';

test('in a weekend whose truth it does not know the plan earns no more than hindsight, and spends no more than there is', () => {
  const { plan, max, few, hindsight } = compareOn({ lots: 40, share: 0.8, off: 0, weekendSd: 0 }, 1, 3_001);
  for (const profit of [plan, max, few]) {
    expect(profit).toBeGreaterThanOrEqual(0);
    expect(profit).toBeLessThanOrEqual(hindsight);
  }
  expect(plan).toBeGreaterThan(0.5 * hindsight);
});

test('closings to learn from are of earlier weekends: they say nothing of how high this one runs', () => {
  const truth = { middle: -0.17, off: 0, weekendSd: 0 };
  const { level } = marketOf(pastClosings(new Dice(1), truth, 30), instant(1));
  expect(level.closings).toBe(0);
  expect(level.sd).toBeCloseTo(0.06, 4);
});

test('whoever knows the odds knows how many lots are won at the max bid, and by how much a weekend runs high', () => {
  const truth = { middle: -0.17, off: 0, weekendSd: 0 };
  const lots = weekendLots(new Dice(2), truth, 3_000);
  const won = lots.filter(({ lot, strongest }) => strongest <= lot.zeroProfit * 0.86).length / lots.length;
  const marketAt = knownMarkets(truth);
  expect(
    marketAt(0)
      .curveOf(lots[0]?.lot.group as never)
      .below(Math.log(0.86)),
  ).toBeCloseTo(won, 1.5);
  expect(
    marketAt(0.1)
      .curveOf(lots[0]?.lot.group as never)
      .below(0.1),
  ).toBe(
    marketAt(0)
      .curveOf(lots[0]?.lot.group as never)
      .below(0),
  );
});

test('a simulated lot ends as its bids say', () => {
  const [lot] = weekendLots(new Dice(1), { middle: 0, off: 0, weekendSd: 0 }, 1);
  if (lot === undefined) throw new Error('one lot was asked for');
  const ended = (bid: number | null) => closingOf(lot.lot, bid === null ? null : cents(bid), 1_005_000, 960_000).ending;
  expect(ended(1_010_000)).toEqual({ was: 'won', price: 1_010_000 });
  expect(ended(1_200_000)).toEqual({ was: 'won', price: 1_010_000 });
  expect(ended(980_000)).toEqual({ was: 'lost', price: 990_000 });
  expect(ended(900_000)).toEqual({ was: 'lost', price: 960_000 });
  expect(ended(null)).toEqual({ was: 'lost', price: 960_000 });
});
