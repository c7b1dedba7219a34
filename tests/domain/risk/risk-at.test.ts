import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Deal } from '../../../src/domain/deal/deal.ts';
import { maxBidOnly } from '../../../src/domain/deal/max-bid.ts';
import { breakdownAt } from '../../../src/domain/deal/price-breakdown.ts';
import { feeDrops } from '../../../src/domain/fees/fee-edges.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { FACTOR_UNIT, factor, PPM, ppm } from '../../../src/domain/money/rate.ts';
import { expectedCost, type UncertainCost } from '../../../src/domain/risk/cost-grid.ts';
import { lossChanceCap, type RiskInputs, riskAt } from '../../../src/domain/risk/risk-at.ts';
import { normalCdf } from '../../../src/domain/statistics/normal.ts';
import { dealArbitrary } from '../deal/random-deal.ts';

const uncertain = fc
  .record({
    amounts: fc.array(fc.integer({ min: 0, max: 150_000 }), { minLength: 3, maxLength: 3 }),
    chance: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ amounts, chance }): UncertainCost => {
    const [low = 0, likely = 0, high = 0] = amounts.sort((a, b) => a - b);
    return { low, likely, high, chance };
  });

/** A deal with its doubt: the costs are in it at their mean, and holding in two cases has the deal's two factors as its mean. */
const doubtful = fc
  .record({
    plain: dealArbitrary(),
    costs: fc.array(uncertain, { maxLength: 3 }),
    sigma: fc.double({ min: 0.01, max: 0.3, noNaN: true }),
    capShare: fc.option(fc.double({ min: 0.8, max: 1.5, noNaN: true }), { nil: undefined }),
  })
  .map(({ plain, costs, sigma, capShare }): { deal: Deal; inputs: RiskInputs } => {
    const lines = costs.map((cost) => ({
      kind: 'recon' as const,
      label: 'x',
      cents: cents(Math.round(expectedCost(cost))),
    }));
    const deal = { ...plain, costs: [...plain.costs, ...lines] };
    const { floorFactor, cashFactor, flatHold } = deal.funding;
    const hold = [0.5, 1.5].map((times) => ({
      chance: 0.5,
      floor: (times * floorFactor) / FACTOR_UNIT,
      cash: (times * cashFactor) / FACTOR_UNIT,
      flat: times * flatHold,
    }));
    const cap = capShare === undefined ? undefined : Math.round(capShare * deal.retail);
    return {
      deal,
      inputs: { retail: { mean: deal.retail, sigma, cap }, costs, hold: () => ({ few: hold, byDay: hold }) },
    };
  });

const PLAIN: Deal = {
  retail: cents(18_000_00),
  titleKeeps: ppm(PPM),
  costs: [],
  fees: [],
  charges: [],
  funding: {
    kind: 'cash',
    advance: ppm(0),
    advanceOnFees: false,
    floorFactor: factor(0),
    cashFactor: factor(0),
    flatHold: cents(0),
  },
  rule: { dollars: cents(0), shareOfRetail: ppm(0), perCash: factor(0) },
  unwind: { chance: ppm(0), fixed: cents(0), rate: ppm(0) },
  increments: [{ fromCents: cents(0), stepCents: cents(2500) }],
};
const AT_ONCE = { chance: 1, floor: 0, cash: 0, flat: 0 };
const PLAIN_INPUTS: RiskInputs = {
  retail: { mean: 18_000_00, sigma: 0.1 },
  costs: [],
  hold: () => ({ few: [AT_ONCE], byDay: [AT_ONCE] }),
};

describe('risk at a price', () => {
  test('has the worksheet’s expected profit, but for the rounding of cents', () => {
    fc.assert(
      fc.property(doubtful, fc.integer({ min: 0, max: 1_200_000 }), ({ deal, inputs }, price) => {
        const { cap, ...retail } = inputs.retail;
        const risk = riskAt(deal, cents(price), { ...inputs, retail });
        const lines = 12 + deal.fees.length + deal.costs.length;
        expect(Math.abs(risk.expectedProfit - breakdownAt(deal, cents(price)).profit)).toBeLessThan(lines);
      }),
    );
  });

  test('with a capped retail has it too: the deal’s figure is the mean under the cap, and the spread is laid around it', () => {
    fc.assert(
      fc.property(doubtful, fc.integer({ min: 0, max: 1_200_000 }), ({ deal, inputs }, price) => {
        fc.pre(deal.retail > 0 && (inputs.retail.cap ?? 1) > 0);
        const risk = riskAt(deal, cents(price), inputs);
        const lines = 12 + deal.fees.length + deal.costs.length;
        expect(Math.abs(risk.expectedProfit - breakdownAt(deal, cents(price)).profit)).toBeLessThan(lines);
      }),
    );
  });

  test('orders its figures: the worst tenth on average, where it begins, and what is expected', () => {
    fc.assert(
      fc.property(doubtful, fc.integer({ min: 0, max: 1_200_000 }), ({ deal, inputs }, price) => {
        const { lossChance, worstTenth, oneInTen, expectedProfit } = riskAt(deal, cents(price), inputs);
        expect(worstTenth).toBeLessThanOrEqual(oneInTen + 1);
        expect(worstTenth).toBeLessThanOrEqual(expectedProfit + 1);
        expect(lossChance).toBeGreaterThanOrEqual(0);
        expect(lossChance).toBeLessThanOrEqual(1);
      }),
      { numRuns: 60 },
    );
  });

  test('of one certain cost and a lognormal retail is the normal integral (worked by hand)', () => {
    const { lossChance } = riskAt(PLAIN, cents(16_000_00), PLAIN_INPUTS);
    expect(lossChance).toBeCloseTo(normalCdf((Math.log(16 / 18) + 0.005) / 0.1), 12);
    // In one of four the sale comes undone and $100 do not come back.
    const shaky = { ...PLAIN, unwind: { chance: ppm(250_000), fixed: cents(100_00), rate: ppm(0) } };
    expect(riskAt(shaky, cents(16_000_00), PLAIN_INPUTS).lossChance).toBeCloseTo(0.25 + 0.75 * lossChance, 12);
  });

  test('of a car that brings nothing is a plain loss', () => {
    const worthless = { ...PLAIN, retail: cents(0) };
    const risk = riskAt(worthless, cents(100_00), { ...PLAIN_INPUTS, retail: { mean: 0, sigma: 0.1, cap: 0 } });
    expect(risk).toMatchObject({ lossChance: 1, expectedProfit: -100_00 });
    // The worst tenth is found by halving; where every outcome is the same it stops some cents away.
    expect(Math.abs(risk.oneInTen + 100_00)).toBeLessThanOrEqual(1);
    expect(Math.abs(risk.worstTenth + 100_00)).toBeLessThanOrEqual(5);
  });
});

describe('the cap on the chance of a loss', () => {
  test('never rises with the price where no fee falls', () => {
    fc.assert(
      fc.property(doubtful, fc.integer({ min: 0, max: PPM }), ({ deal, inputs }, highest) => {
        const accepts = lossChanceCap(deal, inputs, ppm(highest));
        if (accepts === undefined) return;
        const edges = [0, ...feeDrops(deal.fees), 1_300_000];
        for (let i = 1; i < edges.length; i++) {
          const [from = 0, to = 0] = [edges[i - 1], edges[i]];
          const prices = Array.from({ length: 12 }, (_, k) => Math.floor(from + (k * (to - 1 - from)) / 11));
          const answers = prices.map((price) => accepts(cents(price)));
          expect(answers).toEqual([...answers].sort((a, b) => Number(b) - Number(a)));
        }
      }),
      { numRuns: 60 },
    );
  });

  test('never raises the max bid, and a looser one never lowers it', () => {
    fc.assert(
      fc.property(
        doubtful,
        fc.integer({ min: 0, max: 999_999 }),
        fc.integer({ min: 0, max: 999_999 }),
        ({ deal, inputs }, a, b) => {
          const capped = (highest: number) => {
            return maxBidOnly(deal, { riskCap: lossChanceCap(deal, inputs, ppm(highest)) }) ?? -1;
          };
          const [tight, loose] = [capped(Math.min(a, b)), capped(Math.max(a, b))];
          // Where the lowest prices are refused the first interval may be another one: only compare like with like.
          fc.pre(feeDrops(deal.fees).length === 0);
          expect(tight).toBeLessThanOrEqual(loose);
          expect(loose).toBeLessThanOrEqual(maxBidOnly(deal) ?? -1);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('is no rule at all at certainty, and refuses a price at which everything is lost', () => {
    expect(lossChanceCap(PLAIN, PLAIN_INPUTS, ppm(PPM))).toBeUndefined();
    expect(lossChanceCap(PLAIN, PLAIN_INPUTS, ppm(999_999))?.(cents(60_000_00))).toBe(false);
  });
});
