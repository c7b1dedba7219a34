import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { acceptedIntervals } from '../../../src/domain/price/accepted-intervals.ts';
import { incrementsSchema } from '../../../src/domain/price/increments.ts';
import { priceGrid } from '../../../src/domain/price/price-grid.ts';

const grid = priceGrid(incrementsSchema.parse([{ fromCents: 0, stepCents: 10 }]), 200);
const breaks = (...prices: number[]) => prices.map((price) => cents(price));
const upTo = (limit: number) => (price: number) => price <= limit;

describe('accepted prices', () => {
  test('are none when the lowest is refused and nothing makes a higher one cheaper', () => {
    expect(acceptedIntervals(grid, [], [() => false])).toEqual([]);
  });

  test('are all when nothing is refused', () => {
    expect(acceptedIntervals(grid, breaks(50, 120), [() => true])).toEqual([{ low: 0, high: 200 }]);
  });

  test('of pieces that touch are one interval', () => {
    expect(acceptedIntervals(grid, breaks(50), [upTo(70)])).toEqual([{ low: 0, high: 70 }]);
  });

  test('resume after a hole', () => {
    const accepts = (price: number) => (price < 100 ? price <= 70 : price <= 130);
    expect(acceptedIntervals(grid, breaks(100), [accepts])).toEqual([
      { low: 0, high: 70 },
      { low: 100, high: 130 },
    ]);
    expect(acceptedIntervals(grid, breaks(100), [accepts], true)).toEqual([{ low: 0, high: 70 }]);
  });

  test('with breaks off the grid, several of them within one step, or above it, are the same', () => {
    const accepts = (price: number) => (price < 95 ? price <= 70 : price <= 130);
    expect(acceptedIntervals(grid, breaks(91, 93, 95, 500), [accepts])).toEqual([
      { low: 0, high: 70 },
      { low: 100, high: 130 },
    ]);
  });

  test('of two rules are those that both accept, and the second is not asked beyond the first', () => {
    const asked: number[] = [];
    const second = (price: number) => {
      asked.push(price);
      return price <= 40;
    };
    expect(acceptedIntervals(grid, [], [upTo(90), second])).toEqual([{ low: 0, high: 40 }]);
    expect(Math.max(...asked)).toBe(90);
  });

  test('equal a look at every price, whatever the pieces accept', () => {
    const piece = fc.record({ length: fc.integer({ min: 1, max: 9 }), prefix: fc.integer({ min: 0, max: 9 }) });
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 8 }), (pieces) => {
        const yes = pieces.flatMap(({ length, prefix }) => Array.from({ length }, (_, i) => i < prefix));
        const starts = pieces.map((_, i) => pieces.slice(0, i).reduce((sum, { length }) => sum + length, 0) * 10);
        const whole = priceGrid(incrementsSchema.parse([{ fromCents: 0, stepCents: 10 }]), (yes.length - 1) * 10);
        const found = acceptedIntervals(whole, breaks(...starts.slice(1)), [(price) => yes[price / 10] === true]);
        const within = (price: number) => found.some(({ low, high }) => low <= price && price <= high);
        expect(yes.map((_, i) => within(i * 10))).toEqual(yes);
        // Joined: no interval starts on the step after another ends.
        for (const [i, { low }] of found.entries()) expect(low).not.toBe((found[i - 1]?.high ?? -100) + 10);
      }),
    );
  });
});
