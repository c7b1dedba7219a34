import { describe, expect, test } from 'vitest';
import { feeCliffs } from '../../../src/domain/deal/fee-cliffs.ts';
import { priceGrid } from '../../../src/domain/price/price-grid.ts';
import { dollars, flatBandsDeal, table } from '../../reference/worked-deals.ts';

const cliffsOf = (fees: (typeof flatBandsDeal)['fees'], low = 0, high = 9000) => {
  const deal = { ...flatBandsDeal, fees };
  return feeCliffs(deal, priceGrid(deal.increments, dollars(12_000)), dollars(low), dollars(high));
};

describe('fee cliffs', () => {
  test('inside one step of the sale are one: the buyer only sees the step', () => {
    const fees = [table('Buy fee', [0, 100], [5010, 150], [5020, 200])];
    expect(cliffsOf(fees)).toEqual([
      { edge: dollars(5010), before: dollars(5000), at: dollars(5025), step: dollars(25), extraFee: dollars(100) },
    ]);
  });

  test('of several tables at one price add up', () => {
    const fees = [table('Buy fee', [0, 100], [5000, 160]), table('Online fee', [0, 50], [5000, 65])];
    expect(cliffsOf(fees).map(({ extraFee }) => extraFee)).toEqual([dollars(75)]);
  });

  test('are none where the bands join smoothly', () => {
    expect(cliffsOf([table('Buy fee', [0, 0, 8], [5000, 400])])).toEqual([]);
  });

  test('end above the low end and start at or below the high one', () => {
    const fees = [table('Buy fee', [0, 100], [5000, 150], [8000, 200])];
    const edges = (low: number, high: number) => cliffsOf(fees, low, high).map(({ edge }) => edge / 100);
    expect(edges(4999, 7975)).toEqual([5000, 8000]);
    expect(edges(5000, 7974)).toEqual([]);
  });
});
