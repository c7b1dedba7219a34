import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { appraise, appraiseMoney, riskCapOf } from '../../../src/domain/appraisal/appraise.ts';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { riskAt } from '../../../src/domain/risk/risk-at.ts';
import { type Setup, setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { standingOf, worksheetOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import { comp, SETUP, van } from './lot-for-tests.ts';

const NOW = instant(Date.UTC(2026, 10, 27));
const setup: Setup = {
  ...SETUP,
  rules: setupSectionsSchema.shape.rules.parse({ dollarsCents: 150_000 }),
  costs: setupSectionsSchema.shape.costs.parse({}),
};
const context = pricingContext(setup);
const maxBidOf = (facts: LotFacts): number => {
  const standing = standingOf(facts, context);
  if (!standing.ok) throw new Error(standing.message);
  return standing.value.maxBid ?? -1;
};
const money = (facts: LotFacts) => appraiseMoney(facts, setup);

const claim = { about: 'transmission', statement: 'Manual transmission', worthIfFalse: 6_400_00 };

describe('the retail of a lot', () => {
  test('with a guess alone is the guess, and its range is wider than the typed one by how far cars of a kind lie apart', () => {
    // The worked example with no comparables, computed independently: 18,000 within 15,325.75 to 21,140.88, spread 0.125502.
    expect(money(van()).retail).toMatchObject({
      mean: 18_000_00,
      low: 15_325_75,
      high: 21_140_88,
      basis: 'guess',
      sigma: expect.closeTo(0.125502, 6),
    });
  });

  test('with a guess without a range gets the range that the setup holds for it', () => {
    const bare = money(van({ retail: { likely: 18_000_00 } })).retail;
    const reach = Math.exp(0.1 * 1.2815515655);
    const typed = { low: Math.round(18_000_00 / reach), likely: 18_000_00, high: Math.round(18_000_00 * reach) };
    expect(bare?.sigma).toBeCloseTo(money(van({ retail: typed })).retail?.sigma ?? 0, 6);
    expect(bare).toMatchObject({ mean: 18_000_00, basis: 'guess' });
  });

  test('with one end of a range takes the other as far away', () => {
    const far = (retail: object) => money(van({ retail })).retail?.sigma ?? 0;
    const high = { likely: 18_000_00, high: 20_000_00 };
    expect(far(high)).toBeCloseTo(far({ low: 16_200_00, ...high }), 9);
  });

  test('that a comparable agrees with is surer, and bids no less, whatever range was typed', () => {
    for (const spread of [0.01, 0.03, 0.05, 0.08, 0.1, 0.15, 0.2, 0.3]) {
      const retail = {
        low: Math.round(18_000_00 * (1 - spread)),
        likely: 18_000_00,
        high: Math.round(18_000_00 / (1 - spread)),
      };
      const widths = [0, 1, 2, 3].map((count) => {
        const { low = 0, high = 0 } = money(van({ retail, comps: Array(count).fill(comp(18_000_00)) })).retail ?? {};
        return high / low;
      });
      expect(widths).toEqual(widths.toSorted((a, b) => b - a));
      expect(new Set(widths).size).toBe(4);
      expect(maxBidOf(van({ retail, comps: [comp(18_000_00)] }))).toBeGreaterThanOrEqual(maxBidOf(van({ retail })));
    }
  });

  test('takes comparables in, shows their grid, and points out the odd one', () => {
    const facts = van({ comps: [comp(18_200_00), comp(18_000_00), comp(17_800_00), comp(28_000_00)] });
    const retail = money(facts).retail;
    expect(retail?.basis).toBe('guess-and-comps');
    expect(retail?.grid?.counted).toBe(4);
    expect(retail?.odd.map(({ index }) => index)).toEqual([3]);
    expect(money(van({ comps: facts.comps, retail: undefined })).retail?.basis).toBe('comps');
  });

  test('keeps the guess while every comparable is left out, and is nothing without either', () => {
    const comps = [comp(28_000_00, { leftOut: true })];
    expect(money(van({ comps })).retail).toMatchObject({ mean: 18_000_00, basis: 'guess', low: 15_325_75 });
    expect(money(van({ comps, retail: undefined })).retail).toBeUndefined();
    expect(money(van({ comps, retail: undefined })).risk).toBeUndefined();
  });

  test('is cut off by a substitute, range and all', () => {
    const ceilings = [{ kind: 'new', label: 'This year’s, new', list: 19_000_00, rebate: 1_500_00 }];
    const retail = money(van({ ceilings })).retail;
    expect(retail?.cap).toBe(17_500_00);
    expect(retail?.mean).toBeLessThan(17_500_00);
    expect(retail).toMatchObject({ uncapped: 18_000_00, high: 17_500_00, low: 15_325_75 });
    const far = [{ ...ceilings[0], list: 90_000_00 }];
    expect(money(van({ ceilings: far })).retail?.mean).toBe(18_000_00);
    const near = [{ ...ceilings[0], list: 11_500_00 }];
    const held = money(van({ ceilings: near })).retail;
    expect(held?.low).toBe(held?.mean);
    expect(held?.high).toBe(10_000_00);
  });

  test('says what to keep in mind: a mileage mark, a long-listed comparable, one without miles', () => {
    const comps = [
      { kind: 'asking', price: 18_000_00, miles: 60_000, year: 2020, daysListed: 140 },
      { kind: 'sold', price: 18_000_00, year: 2020 },
    ];
    const hints = money(van({ miles: 39_900, comps })).retail?.hints ?? [];
    expect(hints.map(({ kind, index }) => [kind, index])).toEqual([
      ['mileage-mark', undefined],
      ['long-listed', 0],
      ['not-adjusted', 1],
    ]);
    expect(hints[0]?.message).toContain('39,900 miles is just under the 40,000 mark');
    expect(money(van({ miles: 35_000 })).retail?.hints).toEqual([]);
    expect(money(van({ miles: 300 })).retail?.hints).toEqual([]);
  });
});

describe('an appraisal', () => {
  test('lists doubts as costs and says what a look at them is worth', () => {
    const appraisal = appraise(van({ claims: [claim] }), setup, { now: NOW });
    expect(appraisal.costs.map(({ cents }) => cents)).toEqual([640_00]);
    expect(appraisal.checks[0]?.sentence).toBe('A photo of the pedals is worth up to $576.');
    expect(maxBidOf(van()) - maxBidOf(van({ claims: [claim] }))).toBeGreaterThanOrEqual(600_00);
  });

  test('finds contradictions with earlier lives, by the name of the title, and within the listing', () => {
    const facts = van({
      titleId: 'clean',
      claims: [{ about: 'mileage', statement: 'Actual 72,000 miles', worthIfFalse: 500_00 }],
    });
    const sold = {
      source: 'its sale of 3 March',
      at: instant(Date.UTC(2026, 2, 3)),
      facts: { titleId: 'flood', miles: 58_000 },
    };
    const { contradictions } = appraise(facts, setup, { now: NOW, earlier: [sold] });
    expect(contradictions.map(({ kind }) => kind)).toEqual(['miles', 'title']);
    expect(contradictions[1]?.message).toContain('says title Clean, its sale of 3 March says Flood');
  });

  test('expects a car to stand longer beside cars like it, which costs money', () => {
    const beside = (inStock: number) =>
      van({ ceilings: [{ kind: 'in-stock', label: 'Ours', list: 90_000_00, inStock }] });
    expect(money(beside(2)).stretch).toBeCloseTo(1.3, 12);
    expect(money(beside(0)).hold).toBeUndefined();
    expect(maxBidOf(beside(2))).toBeLessThan(maxBidOf(beside(0)));
  });

  test('has a risk whose expected profit is the worksheet’s', () => {
    const facts = van({
      claims: [claim],
      recon: [{ label: 'Brakes', amount: { low: 200_00, likely: 400_00, high: 1_500_00 }, chance: 600_000 }],
      ceilings: [{ kind: 'new', label: 'New', list: 19_500_00, inStock: 1 }],
    });
    const worksheet = worksheetOf(facts, context);
    if (!worksheet.ok) throw new Error(worksheet.message);
    const { deal, appraisal, result } = worksheet.value;
    if (appraisal.risk === undefined) throw new Error('no risk');
    const risk = riskAt(deal, result.breakdown.price, appraisal.risk);
    expect(Math.abs(risk.expectedProfit - result.breakdown.profit)).toBeLessThan(10);
    expect(risk.lossChance).toBeLessThanOrEqual(0.25);
  });

  test('has no cap on a loss where any chance will do', () => {
    const free = { rules: setupSectionsSchema.shape.rules.parse({ dollarsCents: 0, lossChancePpm: 1_000_000 }) };
    const standing = worksheetOf(van(), context);
    if (!standing.ok) throw new Error(standing.message);
    expect(riskCapOf(money(van()), free)(standing.value.deal)).toBeUndefined();
    expect(riskCapOf({}, setup)(standing.value.deal)).toBeUndefined();
  });
});

describe('the max bid', () => {
  const facts = fc
    .record({
      likely: fc.integer({ min: 800_000, max: 6_000_000 }),
      spread: fc.double({ min: 0.02, max: 0.25, noNaN: true }),
      worth: fc.array(fc.integer({ min: 0, max: 900_000 }), { maxLength: 3 }),
      recon: fc.integer({ min: 0, max: 200_000 }),
      list: fc.option(fc.integer({ min: 1_000_000, max: 7_000_000 }), { nil: undefined }),
    })
    .map(({ likely, spread, worth, recon, list }) => ({
      retail: { low: Math.round(likely * (1 - spread)), likely, high: Math.round(likely * (1 + spread)) },
      claims: worth.map((worthIfFalse) => ({ ...claim, worthIfFalse })),
      recon: [{ label: 'Tyres', amount: { likely: recon } }],
      ceilings: list === undefined ? [] : [{ kind: 'new', label: 'New', list }],
    }));
  type Made = typeof facts extends fc.Arbitrary<infer Facts> ? Facts : never;
  const neverHigher = (change: (one: Made) => object) =>
    fc.assert(
      fc.property(facts, (one) => {
        expect(maxBidOf(van({ ...one, ...change(one) }))).toBeLessThanOrEqual(maxBidOf(van(one)));
      }),
      { numRuns: 60 },
    );

  test('never rises with more doubt about retail', () => {
    neverHigher(({ retail: { low, likely, high } }) => ({
      retail: { low: Math.round(low * 0.93), likely, high: Math.round(high * 1.07) },
    }));
  });

  test('never rises with one more doubtful statement, nor with a weaker one', () => {
    neverHigher(({ claims }) => ({ claims: [...claims, claim] }));
    neverHigher(({ claims }) => ({ claims: claims.map((one) => ({ ...one, chanceFalse: 200_000 })) }));
  });

  test('never rises with recon, with a lower substitute, or with cars like it in stock', () => {
    neverHigher(({ recon: [line] }) => ({
      recon: [{ label: 'Tyres', amount: { likely: (line?.amount.likely ?? 0) + 30_000 } }],
    }));
    neverHigher(({ ceilings }) => ({
      ceilings: [...ceilings, { kind: 'plainer', label: 'Plainer', list: 1_500_000, inStock: 2 }],
    }));
  });

  test('never rises with recon that may overrun further at the same mean', () => {
    neverHigher(({ recon: [line] }) => {
      const likely = line?.amount.likely ?? 0;
      return { recon: [{ label: 'Tyres', amount: { low: 0, likely, high: 2 * likely } }] };
    });
  });
});

test('risk keeps the ceiling: no price above it is ever counted, whatever retail might have been', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 900_000, max: 4_000_000 }),
      fc.integer({ min: 900_000, max: 4_000_000 }),
      (likely, list) => {
        const facts = van({ retail: { likely }, ceilings: [{ kind: 'new', label: 'New', list }] });
        const { retail, risk } = money(facts);
        expect(risk?.retail.cap).toBe(list);
        expect(risk?.retail.mean).toBe(retail?.uncapped);
        const sheet = worksheetOf(facts, context);
        if (!sheet.ok || risk === undefined) throw new Error('it has a retail figure');
        // So dear that only prices above the ceiling could pay for it.
        const dear = cents(Math.max(list, sheet.value.deal.retail));
        expect(riskAt(sheet.value.deal, dear, risk).lossChance).toBeGreaterThan(0.999);
      },
    ),
    { numRuns: 40 },
  );
});
