import { describe, expect, test } from 'vitest';
import { incrementsSchema } from '../../../src/domain/price/increments.ts';
import { priceGrid } from '../../../src/domain/price/price-grid.ts';
import { sealedBid } from '../../../src/domain/risk/sealed-bid.ts';

// A price of 10,000 cents stands for 1.
const grid = priceGrid(incrementsSchema.parse([{ fromCents: 0, stepCents: 1 }]), 10_000);

describe('a sealed bid', () => {
  // Vickrey 1961, from memory: with N − 1 rivals uniform on 0 to 1 and a value v, bid v·(N − 1)/N.
  test.each([
    [0.8, 5, 0.64],
    [1, 2, 0.5],
    [0.6, 3, 0.4],
  ])('for a car worth %d against rivals of %d bidders is %d', (value, bidders, expected) => {
    const best = sealedBid(
      grid,
      (price) => (price / 10_000) ** (bidders - 1),
      (price) => value - price / 10_000,
    );
    expect((best?.bid ?? 0) / 10_000).toBeCloseTo(expected, 4);
  });

  test('is lower than the last price that pays, and is none when no price leaves anything', () => {
    const surplus = (price: number) => 5000 - price;
    expect(sealedBid(grid, (price) => price / 10_000, surplus)?.bid).toBe(2500);
    expect(sealedBid(grid, () => 0, surplus)).toBeUndefined();
    expect(
      sealedBid(
        grid,
        () => 1,
        () => -1,
      ),
    ).toBeUndefined();
  });
});

test('among more prices than can be looked at one by one, the same one is found', () => {
  const fine = priceGrid(incrementsSchema.parse([{ fromCents: 0, stepCents: 1 }]), 1_000_003);
  const winChance = (price: number) => price / 1_000_003;
  const surplus = (price: number) => 777_777 - price;
  // By calculus: p·(777,777 − p) is largest halfway.
  expect(sealedBid(fine, winChance, surplus)?.bid).toBe(388_888);
  let asked = 0;
  sealedBid(
    fine,
    (price) => {
      asked += 1;
      return winChance(price);
    },
    surplus,
  );
  expect(asked).toBeLessThan(25_000);
});
