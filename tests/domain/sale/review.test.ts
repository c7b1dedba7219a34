import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Result } from '../../../src/domain/sale/result.ts';
import { resultDoubt } from '../../../src/domain/sale/result-doubt.ts';
import { totalResults } from '../../../src/domain/sale/result-totals.ts';
import { reviewResult } from '../../../src/domain/sale/review.ts';

const dollars = (n: number) => cents(n * 100);
const STEPS = [{ fromCents: dollars(0), stepCents: dollars(100) }];
const lost = (n: number): Result => ({ ended: 'lost', hammerCents: dollars(n) });
const won = (n: number): Result => ({ ended: 'won', hammerCents: dollars(n) });

test('a lot lost above our max bid was out of reach, by the difference', () => {
  expect(reviewResult(lost(13_000), dollars(12_400), STEPS)).toEqual({
    hammer: 1_300_000,
    overMax: 60_000,
    wouldHavePaid: false,
  });
});

test('to win one has to go a step past the winner: at our very max bid he was one step too far', () => {
  expect(reviewResult(lost(12_400), dollars(12_400), STEPS).wouldHavePaid).toBe(false);
  expect(reviewResult(lost(12_350), dollars(12_400), STEPS).wouldHavePaid).toBe(true);
  expect(reviewResult(lost(12_300), dollars(12_400), STEPS)).toMatchObject({ overMax: -10_000, wouldHavePaid: true });
});

test('what is not known is not made up', () => {
  expect(reviewResult({ ended: 'lost' }, dollars(12_400), STEPS)).toEqual({});
  expect(reviewResult(lost(9000), undefined, STEPS)).toEqual({ hammer: 900_000 });
  expect(reviewResult(lost(9000), null, STEPS)).toEqual({ hammer: 900_000, wouldHavePaid: false });
  expect(reviewResult({ ended: 'not-sold', highCents: dollars(1) }, dollars(5), STEPS)).toEqual({});
  expect(reviewResult(won(9000), dollars(9500), STEPS)).toEqual({ hammer: 900_000, overMax: -50_000 });
});

test('totals count each result once, whatever the order, and whole cents add up', () => {
  const result = fc.oneof(
    fc.nat(50_000).map((n) => won(n + 1)),
    fc.nat(50_000).map((n) => lost(n + 1)),
    fc.constantFrom<Result>({ ended: 'lost' }, { ended: 'not-sold' }, { ended: 'pending' }, { ended: 'withdrawn' }),
  );
  const rows = fc.array(
    fc
      .record({ result, maxBid: fc.option(fc.nat(50_000).map(dollars)), undone: fc.boolean() })
      .map(({ result: one, maxBid, undone }) => ({
        canceled: one.ended === 'won' && undone,
        result: one,
        review: reviewResult(one, maxBid, STEPS),
      })),
  );
  fc.assert(
    fc.property(rows, (all) => {
      const totals = totalResults(all);
      expect(totalResults([...all].reverse())).toEqual(totals);
      expect(totals.count).toBe(all.length);
      expect(totals.won + totals.canceled + totals.lost + totals.pending + totals.notSold + totals.other).toBe(
        all.length,
      );
      const halves = [all.slice(0, all.length / 2), all.slice(all.length / 2)].map(totalResults);
      expect(halves.reduce((sum, half) => sum + half.hammer, 0)).toBe(totals.hammer);
      expect(totals.withinReach).toBeLessThanOrEqual(totals.compared);
      expect(totals.compared).toBeLessThanOrEqual(totals.lost);
    }),
  );
});

test('the average over our max bid counts only what went past it', () => {
  const at = (price: number, max: number) => ({
    canceled: false,
    result: lost(price),
    review: reviewResult(lost(price), dollars(max), STEPS),
  });
  expect(totalResults([at(13_000, 12_000), at(12_500, 12_000), at(9000, 12_000)])).toMatchObject({
    compared: 3,
    withinReach: 1,
    averageOver: 75_000,
  });
  expect(totalResults([at(9000, 12_000)]).averageOver).toBeNull();
  // One step too far, and yet not past it.
  expect(totalResults([at(12_000, 12_000)])).toMatchObject({ withinReach: 0, averageOver: null });
});

test('an amount with a zero too many or too few is asked about', () => {
  const facts = { priceNow: dollars(11_000), proxy: dollars(12_000) };
  expect(resultDoubt(won(125_000), facts, null)).toContain('far above');
  expect(resultDoubt(lost(1250), facts, dollars(12_500))).toContain('far below');
  expect(resultDoubt(won(12_000), facts, dollars(12_500))).toBeNull();
  expect(resultDoubt(lost(14_000), facts, dollars(12_500))).toBeNull();
  expect(resultDoubt({ ended: 'lost' }, facts, null)).toBeNull();
  expect(resultDoubt(won(1), {}, null)).toBeNull();
});
