import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Deal } from '../../src/domain/deal/deal.ts';
import { maxBid } from '../../src/domain/deal/max-bid.ts';
import { cents, ZERO } from '../../src/domain/money/cents.ts';
import { FACTOR_UNIT, PPM } from '../../src/domain/money/rate.ts';
import { dealArbitrary } from '../domain/deal/random-deal.ts';
import { oracleAccepted, oracleFees, oracleGrid, oracleRuns, oracleSums } from './max-bid-oracle.ts';
import { dollars, flatBandsDeal, holeDeal } from './worked-deals.ts';

/**
 * Ways of working a max bid out that look right and are wrong. Each must be told apart by the trial that the real one
 * passes; if one slips through, the trial is too easy. The judge is tests/reference/max-bid-oracle.ts, a second reckoning from
 * the definition in whole numbers; the fee bands are invented, no source.
 */
const deals = fc.sample(dealArbitrary(), { numRuns: 800, seed: 7 });
const mistakes = (wrongWay: (deal: Deal) => number | null): number =>
  deals.filter((deal) => wrongWay(deal) !== maxBid(deal).maxBid).length;

describe('the trial tells apart', () => {
  test('one search by halving over the whole grid, which jumps across a hole', () => {
    const wrong = (deal: Deal) => {
      const grid = oracleGrid(deal);
      const pays = (i: number) => oracleSums(deal, BigInt(grid[i] ?? 0)).slack >= 0n;
      if (!pays(0)) return null;
      let yes = 0;
      let no = grid.length;
      while (no - yes > 1) {
        const middle = (yes + no) >> 1;
        if (pays(middle)) yes = middle;
        else no = middle;
      }
      return grid[yes] ?? null;
    };
    expect(mistakes(wrong)).toBeGreaterThan(5);
    // At $18,250 halving happens to check $10,100 and never at the hole below it.
    expect([18_100, 18_200, 18_250].some((retail) => wrong(holeDeal(retail)) !== maxBid(holeDeal(retail)).maxBid)).toBe(
      true,
    );
  });

  test('the top of the accepted set, which a proxy could be made to overpay below', () => {
    const wrong = (deal: Deal) => oracleAccepted(deal).at(-1)?.high ?? null;
    expect(mistakes(wrong)).toBeGreaterThan(20);
    expect(wrong(holeDeal(18_100))).toBe(dollars(10_025));
  });

  test('solving an equation with the fee of the band it started in', () => {
    // What is left for the hammer once the fee at a first guess is taken off; right only if no edge lies between.
    const wrong = (deal: Deal) => {
      const at = (price: number) => oracleSums(deal, BigInt(price));
      const guess = Math.max(0, Math.round(deal.retail / 2));
      const slope = 1 + (deal.funding.kind === 'cash' ? deal.funding.cashFactor / FACTOR_UNIT : 0);
      const solved = guess + Number(at(guess).slack) / slope;
      const grid = oracleGrid(deal);
      return grid.filter((price) => price <= solved).at(-1) ?? null;
    };
    expect(mistakes(wrong)).toBeGreaterThan(200);
  });

  test('giving a price on an edge the band below', () => {
    const late = (deal: Deal): Deal => ({
      ...deal,
      fees: deal.fees.map((table) => ({
        ...table,
        bands: table.bands.map((band, i) => (i === 0 ? band : { ...band, fromCents: cents(band.fromCents + 1) })),
      })),
    });
    const sets = deals.filter(
      (deal) => JSON.stringify(maxBid(late(deal)).accepted) !== JSON.stringify(maxBid(deal).accepted),
    );
    expect(sets.length).toBeGreaterThan(5);
    // At $8,000 a retail of $11,292 is needed with the $400 fee of the band below, and $11,394 with the $500 due there.
    const onEdge: Deal = { ...flatBandsDeal, retail: dollars(11_350) };
    expect(oracleFees(onEdge, 800_000n)).toBe(50_000n);
    expect(maxBid(onEdge).maxBid).toBe(dollars(7975));
    expect(maxBid(late(onEdge)).maxBid).toBe(dollars(8000));
  });

  test('adding up in floating-point dollars', () => {
    const wrong = (deal: Deal) => {
      const fee = (price: number) =>
        deal.fees.reduce((sum, table) => {
          const band = table.bands.filter((b) => b.fromCents / 100 <= price).at(-1);
          const raw = (band?.flatCents ?? 0) / 100 + (price * (band?.ratePpm ?? 0)) / PPM;
          return sum + Math.min(Math.max(raw, (band?.minimumCents ?? 0) / 100), (band?.maximumCents ?? Infinity) / 100);
        }, 0);
      const costs = [...deal.costs, ...deal.charges].reduce((sum, line) => sum + line.cents / 100, 0);
      const left = (price: number) =>
        (deal.retail * deal.titleKeeps) / PPM / 100 - costs - deal.rule.dollars / 100 - price - fee(price);
      return oracleRuns(oracleGrid(deal), (price) => left(price / 100) >= 0)[0]?.high ?? null;
    };
    // Without holding cost and the like, so that only the arithmetic differs; retail set so that exactly 0 is left.
    const plain = deals.map((deal): Deal => {
      const bare: Deal = {
        ...deal,
        funding: { ...deal.funding, kind: 'cash', cashFactor: deal.funding.cashFactor, flatHold: ZERO },
        unwind: { ...deal.unwind, chance: flatBandsDeal.unwind.chance },
        rule: { ...flatBandsDeal.rule, dollars: deal.rule.dollars },
        titleKeeps: flatBandsDeal.titleKeeps,
      };
      const free = { ...bare, funding: { ...bare.funding, cashFactor: flatBandsDeal.funding.floorFactor } };
      const price = oracleGrid(free)[Math.floor(oracleGrid(free).length / 2)] ?? 0;
      return {
        ...free,
        retail: cents(Math.max(0, Number(BigInt(free.retail) - oracleSums(free, BigInt(price)).slack))),
      };
    });
    const missed = plain.filter((deal) => wrong(deal) !== (oracleAccepted(deal)[0]?.high ?? null));
    expect(missed.length).toBeGreaterThan(20);
    for (const deal of plain) expect(maxBid(deal).accepted).toEqual(oracleAccepted(deal));
  });

  test('leaving out the price of the cash that recon ties up', () => {
    const wrong: Deal = {
      ...flatBandsDeal,
      costs: flatBandsDeal.costs.map((line) => (line.kind === 'recon' ? { ...line, kind: 'pack' } : line)),
    };
    expect(maxBid(wrong).maxBid).not.toBe(maxBid(flatBandsDeal).maxBid);
  });
});
