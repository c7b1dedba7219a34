import { expect, test } from 'vitest';
import { incrementsSchema } from '../../../src/domain/price/increments.ts';

type Pair = readonly [from: number, step: number];
const bands = (...pairs: readonly Pair[]) =>
  incrementsSchema.safeParse(pairs.map(([fromCents, stepCents]) => ({ fromCents, stepCents })));
const reasons = (...pairs: readonly Pair[]) => bands(...pairs).error?.issues.map(({ message }) => message);

test('bands that begin at 0 and rise are taken, one alone too', () => {
  expect(bands([0, 2500]).success).toBe(true);
  expect(bands([0, 2500], [100_000, 5000], [500_000, 10_000]).success).toBe(true);
});

test('a price below the first band could not be bid, so it begins at 0', () => {
  expect(reasons([100, 2500])).toEqual(['the first increment band must start at 0']);
  expect(bands().success).toBe(false);
});

test('each band starts above the one before it, wherever in the table it stands', () => {
  const wrong = ['each increment band must start above the one before it'];
  expect(reasons([0, 2500], [0, 5000])).toEqual(wrong);
  expect(reasons([0, 2500], [200_000, 5000], [100_000, 10_000])).toEqual(wrong);
  expect(reasons([0, 2500], [200_000, 5000], [200_000, 10_000], [300_000, 10_000])).toEqual(wrong);
});

test('a step of nothing would never come to an end', () => {
  expect(bands([0, 0]).success).toBe(false);
  expect(bands([0, -100]).success).toBe(false);
  expect(bands([0, 1]).success).toBe(true);
});
