import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { incrementsSchema } from '../../../src/domain/price/increments.ts';
import { nextPrice, priceGrid } from '../../../src/domain/price/price-grid.ts';
import { oracleGrid } from '../../reference/max-bid-oracle.ts';
import { dealArbitrary } from '../deal/random-deal.ts';

const bands = (...pairs: [number, number][]) =>
  incrementsSchema.parse(pairs.map(([fromCents, stepCents]) => ({ fromCents, stepCents })));
const all = (grid: ReturnType<typeof priceGrid>) => Array.from({ length: grid.size }, (_, i) => grid.priceAt(i));

describe('the prices of a sale', () => {
  test('run from 0 to the limit, which counts', () => {
    expect(all(priceGrid(bands([0, 25]), 100))).toEqual([0, 25, 50, 75, 100]);
    expect(all(priceGrid(bands([0, 25]), 99))).toEqual([0, 25, 50, 75]);
    expect(all(priceGrid(bands([0, 25]), 0))).toEqual([0]);
  });

  test('are counted anew from each band, wherever the band below ended', () => {
    expect(all(priceGrid(bands([0, 30], [100, 50]), 200))).toEqual([0, 30, 60, 90, 100, 150, 200]);
    expect(all(priceGrid(bands([0, 70], [50, 50]), 100))).toEqual([0, 50, 100]);
  });

  test('are the ones a plain loop gives, and are found again by their price', () => {
    fc.assert(
      fc.property(dealArbitrary(300_000), fc.nat({ max: 400_000 }), (deal, price) => {
        const top = Math.round((deal.retail * deal.titleKeeps) / 1e6);
        const grid = priceGrid(deal.increments, top);
        const plain = oracleGrid(deal);
        expect(all(grid)).toEqual(plain);
        const at = plain.findIndex((p) => p >= price);
        expect(grid.indexFrom(price)).toBe(at === -1 ? plain.length : at);
      }),
      { numRuns: 300 },
    );
  });

  test('the next price is the first of the grid above, on the grid or off it', () => {
    const steps = bands([0, 30], [100, 50]);
    expect([0, 29, 30, 89, 90, 99, 100, 149, 150].map((p) => nextPrice(steps, cents(p)))).toEqual([
      30, 30, 60, 90, 100, 100, 150, 150, 200,
    ]);
  });
});
