import { expect, test } from 'vitest';
import { breakdownAt } from '../../../src/domain/deal/price-breakdown.ts';
import { profitPoints } from '../../../src/domain/deal/profit-points.ts';
import { dollars, flatBandsDeal, holeDeal } from '../../reference/worked-deals.ts';

test('the profit curve has both sides of every fee jump, in order and on the grid', () => {
  const points = profitPoints(flatBandsDeal, dollars(4000), dollars(9000), 10);
  const prices = points.map((point) => point.price);
  for (const price of [4000, 4975, 5000, 7975, 8000, 9000]) expect(prices).toContain(dollars(price));
  expect(prices).toEqual([...new Set(prices)].sort((a, b) => a - b));
  expect(prices.every((price) => price % 2500 === 0)).toBe(true);
});

test('its profits are those of the worksheet', () => {
  for (const { price, profit, required } of profitPoints(holeDeal(18_100), dollars(9000), dollars(11_000))) {
    expect(breakdownAt(holeDeal(18_100), price)).toMatchObject({ profit, required });
  }
});

test('a curve of a single price is one point', () => {
  expect(profitPoints(flatBandsDeal, dollars(0), dollars(0))).toHaveLength(1);
});
