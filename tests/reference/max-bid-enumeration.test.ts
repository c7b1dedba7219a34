import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Deal } from '../../src/domain/deal/deal.ts';
import { maxBid, maxBidOnly } from '../../src/domain/deal/max-bid.ts';
import { breakdownAt } from '../../src/domain/deal/price-breakdown.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { dealArbitrary } from '../domain/deal/random-deal.ts';
import { oracleAccepted, oracleGrid, oracleRuns, oracleSums } from './max-bid-oracle.ts';

// The deals are invented, so no published source has their max bids: the judge tries every price of the sale in whole cents.
const DEALS = 4000;

/** The same deals every time, so that the counts below are facts and not luck. */
const deals = fc.sample(dealArbitrary(), { numRuns: DEALS, seed: 20_251_128 });
const enumerated = deals.map((deal) => ({ deal, runs: oracleAccepted(deal) }));

describe(`${DEALS} random deals against a look at every single price (computed independently)`, () => {
  test('the accepted set is the same in every one', () => {
    const wrong = enumerated.filter(({ deal, runs }) => JSON.stringify(maxBid(deal).accepted) !== JSON.stringify(runs));
    expect(wrong).toEqual([]);
  });

  test('the max bid is the end of the run that starts at 0, by the long way and by the short one', () => {
    for (const { deal, runs } of enumerated) {
      const expected = runs[0]?.low === 0 ? runs[0].high : null;
      expect(maxBid(deal).maxBid).toBe(expected);
      expect(maxBidOnly(deal)).toBe(expected);
    }
  });

  test('the deals are a real trial: holes, floor plans, caps, every limit and nothing that pays all occur often', () => {
    const count = (is: (deal: Deal, runs: (typeof enumerated)[number]['runs']) => boolean) =>
      enumerated.filter(({ deal, runs }) => is(deal, runs)).length;
    expect(count((_, runs) => runs.length > 1)).toBeGreaterThan(DEALS * 0.03);
    expect(count((_, runs) => runs.length === 0)).toBeGreaterThan(DEALS * 0.03);
    expect(count((_, runs) => (runs[0]?.low ?? 0) > 0)).toBeGreaterThan(0);
    expect(count((_, runs) => (runs[0]?.high ?? 0) > 100_000)).toBeGreaterThan(DEALS * 0.4);
    expect(count((deal) => deal.increments.length > 1)).toBeGreaterThan(DEALS * 0.3);
    const capped = (deal: Deal) => {
      const { advanceCap, kind } = deal.funding;
      const { maxBid: most, breakdown } = maxBid(deal);
      return kind === 'floor' && most !== null && breakdown.financed > 0 && breakdown.financed === advanceCap;
    };
    expect(count(capped)).toBeGreaterThan(DEALS * 0.05);
    for (const rule of ['least-dollars', 'least-share', 'least-return', 'nothing-pays'] as const) {
      expect(count((deal) => maxBid(deal).limitedBy === rule)).toBeGreaterThan(DEALS * 0.02);
    }
  });

  test('every sum agrees at the max bid, at the price after it and at a price off the grid', () => {
    for (const { deal, runs } of enumerated) {
      const most = runs[0]?.high ?? 0;
      for (const price of [most, most + 2500, Math.floor(most / 2) + 1]) {
        const ours = breakdownAt(deal, cents(price));
        const theirs = oracleSums(deal, BigInt(price));
        const { fees, allIn, financed, cash, profit, required, slack } = ours;
        expect({ fees, allIn, financed, cash, profit, required, slack }).toEqual({
          fees: Number(theirs.fees),
          allIn: Number(theirs.allIn),
          financed: Number(theirs.financed),
          cash: Number(theirs.cash),
          profit: Number(theirs.profit),
          required: Number(theirs.required),
          slack: Number(theirs.slack),
        });
        const step = (key: string) => ours.steps.find((line) => line.key === key)?.cents ?? 0;
        expect(step('interest')).toBe(Number(theirs.interest));
        expect(step('own-cash')).toBe(Number(theirs.cashCost));
        expect(step('undone')).toBe(Number(theirs.undone));
      }
    }
  });

  test('a second rule that worsens with the all-in cost is combined exactly', () => {
    for (const { deal } of enumerated.slice(0, 1500)) {
      const limit = oracleSums(deal, BigInt(Math.floor(deal.retail / 3))).allIn;
      const riskCap = (price: number) => oracleSums(deal, BigInt(price)).allIn <= limit;
      const expected = oracleRuns(
        oracleGrid(deal),
        (price) => oracleSums(deal, BigInt(price)).slack >= 0n && riskCap(price),
      );
      expect(maxBid(deal, { riskCap }).accepted).toEqual(expected);
    }
  });
});
