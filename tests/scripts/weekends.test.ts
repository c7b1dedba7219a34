import { expect, test } from 'vitest';
import { compareOn } from '../../scripts/plan/weekends/compare.ts';
import { closingOf, weekendLots } from '../../scripts/plan/weekends/weekend.ts';
import { Dice } from '../../scripts/reader/dice.ts';
import { cents } from '../../src/domain/money/cents.ts';

test('in a weekend whose truth it does not know the plan earns no more than hindsight, and spends no more than there is', () => {
  const { plan, max, few, hindsight } = compareOn({ lots: 40, share: 0.8, off: 0, weekendSd: 0 }, 1, 3_001);
  for (const profit of [plan, max, few]) {
    expect(profit).toBeGreaterThanOrEqual(0);
    expect(profit).toBeLessThanOrEqual(hindsight);
  }
  expect(plan).toBeGreaterThan(0.5 * hindsight);
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
