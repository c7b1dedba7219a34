import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cents, LARGEST_CENTS, sumCents } from '../../../src/domain/money/cents.ts';
import { splitByLargestRemainder } from '../../../src/domain/money/split-by-largest-remainder.ts';

const amount = fc.integer({ min: -LARGEST_CENTS, max: LARGEST_CENTS }).map(cents);
const weights = fc
  .array(fc.nat({ max: 2 ** 40 }), { minLength: 1, maxLength: 12 })
  .filter((list) => list.some(Boolean));

test('the shares add up to the amount, each within a cent of its exact share', () => {
  fc.assert(
    fc.property(amount, weights, (whole, by) => {
      const shares = splitByLargestRemainder(whole, by);
      expect(sumCents(shares)).toBe(whole);
      const total = by.reduce((sum, weight) => sum + BigInt(weight), 0n);
      shares.forEach((share, i) => {
        const off = BigInt(share) * total - BigInt(whole) * BigInt(by[i] ?? 0);
        expect(off < total && off > -total).toBe(true);
      });
    }),
  );
});

test('who has no weight gets nothing, and less than nothing is shared like something', () => {
  fc.assert(
    fc.property(amount, weights, (whole, by) => {
      const shares = splitByLargestRemainder(whole, [...by, 0]);
      expect(shares.at(-1)).toBe(0);
      const negated = splitByLargestRemainder(cents(-whole), [...by, 0]);
      expect(negated).toEqual(shares.map((share) => cents(-share)));
    }),
  );
});

test('weights that mean nothing are our own mistake', () => {
  expect(() => splitByLargestRemainder(cents(100), [1, -1])).toThrow(RangeError);
  expect(() => splitByLargestRemainder(cents(100), [0.5, 1])).toThrow(RangeError);
  expect(() => splitByLargestRemainder(cents(100), [0, 0])).toThrow(RangeError);
  expect(splitByLargestRemainder(cents(0), [0, 0])).toEqual([0, 0]);
});
