import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { appraise } from '../../../src/domain/appraisal/appraise.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { walkOf } from '../../../src/domain/worksheet/walk-of.ts';
import { comp, SETUP, sheetOf, van } from './lot-for-tests.ts';

const NOW = instant(Date.UTC(2026, 10, 27));
const maxBid = (facts: object, setup: Setup = SETUP): number => sheetOf(van(facts), setup).result.maxBid ?? -1;
const retail = (facts: object) => {
  const found = sheetOf(van(facts)).appraisal.retail;
  if (found === undefined) throw new Error('no retail');
  return found;
};
/** Comparables that lie a little apart, the same ones whenever so many are asked for. */
const some = (count: number) =>
  Array.from({ length: count }, (_, i) =>
    comp(18_000_00 + Math.round(Math.sin(i * 2.3) * 900_00), { miles: 60_000 + (i % 5) * 700 }),
  );

describe('an appraisal with so many comparables', () => {
  test.each([0, 1, 2, 3, 40])('gives a range and a max bid with %d', (count) => {
    const facts = { comps: some(count) };
    const { mean, low, high } = retail(facts);
    expect(low).toBeLessThan(mean);
    expect(mean).toBeLessThan(high);
    expect(maxBid(facts)).toBeGreaterThan(9_000_00);
  });

  test('is surer the more there are', () => {
    const widths = [0, 1, 3, 10, 40].map((count) => {
      const { low, high } = retail({ retail: { likely: 18_000_00 }, comps: some(count) });
      return high - low;
    });
    expect(widths).toEqual(widths.toSorted((a, b) => b - a));
  });

  test('works from comparables alone, and from one alone', () => {
    for (const count of [1, 40]) {
      const { basis, grid } = retail({ retail: undefined, comps: some(count) });
      expect([basis, grid?.counted, grid?.guessCounts]).toEqual(['comps', count, 0]);
    }
  });
});

describe('a buyer’s odd cases', () => {
  test('one comparable 40% off among good ones is pointed out, with what retail is without it', () => {
    const good = some(4);
    const odd = comp(10_800_00);
    const { odd: found, mean } = retail({ comps: [...good, odd] });
    expect(found.map(({ index, side }) => [index, side])).toEqual([[4, 'below']]);
    expect(found[0]?.withoutIt).toBe(retail({ comps: good }).mean);
    expect(mean).toBeLessThan(found[0]?.withoutIt ?? 0);
    const leftOut = retail({ comps: [...good, { ...odd, leftOut: true }] });
    expect(leftOut.mean).toBe(found[0]?.withoutIt);
    expect(leftOut.odd).toEqual([]);
  });

  test('a lone comparable 40% below the guess is pointed out too', () => {
    expect(retail({ comps: [comp(10_000_00)] }).odd.map(({ index }) => index)).toEqual([0]);
  });

  test('a branded title and an unverified statement together: both come off, once each, and it takes own cash', () => {
    const facts = {
      titleId: 'flood',
      claims: [{ about: 'transmission', statement: 'Manual transmission', worthIfFalse: 6_400_00 }],
    };
    const sheet = sheetOf(van(facts));
    const { steps } = walkOf(sheet);
    expect(steps.find(({ group }) => group === 'title')?.cents).toBe(5_400_00);
    expect(steps.find(({ group }) => group === 'doubt')?.cents).toBe(640_00);
    expect(sheet.deal.funding.kind).toBe('cash');
    expect(sheet.result.breakdown.financed).toBe(0);
    expect(sheet.result.maxBid ?? 0).toBeLessThan(maxBid({ titleId: 'flood' }));
    expect(appraise(van(facts), SETUP, { now: NOW }).checks[0]?.sentence).toContain('photo of the pedals');
  });

  test('a car that the listing’s own figures contradict says so, and is priced all the same', () => {
    const facts = {
      miles: 41_200,
      claims: [{ about: 'mileage', statement: '72,500 miles, actual', worthIfFalse: 1_000_00 }],
    };
    expect(appraise(van(facts), SETUP, { now: NOW }).contradictions.map(({ kind }) => kind)).toEqual(['miles']);
    expect(maxBid(facts)).toBeGreaterThan(0);
  });
});

describe('raising a cost never raises the max bid', () => {
  const amount = fc.integer({ min: 0, max: 300_000 });
  const facts = fc.record({
    likely: fc.integer({ min: 500_000, max: 4_000_000 }),
    titleId: fc.constantFrom('clean', 'flood'),
    comps: fc.array(fc.integer({ min: 500_000, max: 4_000_000 }), { maxLength: 3 }),
  });
  const lot = ({ likely, titleId, comps }: { likely: number; titleId: string; comps: number[] }) => ({
    retail: { likely },
    titleId,
    comps: comps.map((price) => comp(price)),
  });
  const withCosts = (more: object): Setup => ({ ...SETUP, costs: { ...SETUP.costs, ...more } });
  const setupCosts = ['packCents', 'overheadCents', 'sellingCents', 'reconCents'] as const;

  test.each(setupCosts)('in the setup: %s', (key) => {
    fc.assert(
      fc.property(facts, amount, (one, more) => {
        const dearer = withCosts({ [key]: SETUP.costs[key] + more });
        expect(maxBid(lot(one), dearer)).toBeLessThanOrEqual(maxBid(lot(one)));
      }),
      { numRuns: 25 },
    );
  });

  test('of the lot: transport, recon', () => {
    fc.assert(
      fc.property(facts, amount, amount, (one, base, more) => {
        const transport = (cents: number) => maxBid({ ...lot(one), transport: cents });
        expect(transport(base + more)).toBeLessThanOrEqual(transport(base));
        const recon = (likely: number) => maxBid({ ...lot(one), recon: [{ label: 'Tires', amount: { likely } }] });
        expect(recon(base + more)).toBeLessThanOrEqual(recon(base));
      }),
      { numRuns: 25 },
    );
  });

  test('of holding: interest, own cash, the place on the lot, more days', () => {
    fc.assert(
      fc.property(facts, fc.integer({ min: 0, max: 100_000 }), (one, more) => {
        const { carrying } = SETUP;
        const { floorPlan } = carrying;
        if (floorPlan === undefined) throw new Error('there is a floor plan');
        const dearer = [
          { ...carrying, floorPlan: { ...floorPlan, annualRatePpm: floorPlan.annualRatePpm + more } },
          { ...carrying, cashAnnualRatePpm: carrying.cashAnnualRatePpm + more },
          { ...carrying, lotCentsPerDay: carrying.lotCentsPerDay + Math.round(more / 100) },
          { ...carrying, daysToSell: { ...carrying.daysToSell, days: 40 + Math.round(more / 2000) } },
        ] as Setup['carrying'][];
        for (const next of dearer)
          expect(maxBid(lot(one), { ...SETUP, carrying: next })).toBeLessThanOrEqual(maxBid(lot(one)));
      }),
      { numRuns: 20 },
    );
  });
});
