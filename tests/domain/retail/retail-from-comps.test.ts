import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { adjustedComp } from '../../../src/domain/retail/adjusted-comp.ts';
import { type Comp, compSchema } from '../../../src/domain/retail/comp.ts';
import { DEFAULT_ESTIMATION as settings } from '../../../src/domain/retail/estimation.ts';
import { oddComps } from '../../../src/domain/retail/odd-comps.ts';
import { retailFromComps } from '../../../src/domain/retail/retail-from-comps.ts';

const comp = (over: object): Comp => compSchema.parse({ kind: 'sold', price: 18_000_00, ...over });
const subject = { miles: 60_000, year: 2020 };
const guess = { low: cents(16_000_00), likely: cents(18_000_00), high: cents(20_000_00) };

const anyComp = fc
  .record({
    kind: fc.constantFrom('sold', 'asking'),
    price: fc.integer({ min: 500_000, max: 9_000_000 }),
    miles: fc.option(fc.integer({ min: 0, max: 250_000 }), { nil: undefined }),
    year: fc.option(fc.integer({ min: 2005, max: 2026 }), { nil: undefined }),
    differences: fc.array(
      fc.record({ label: fc.constant('roof'), cents: fc.integer({ min: -50_000, max: 200_000 }) }),
      {
        maxLength: 3,
      },
    ),
    leftOut: fc.boolean(),
  })
  .map(comp);

describe('a comparable', () => {
  test('shows every step, and its price with the changes of the steps is what it says', () => {
    const { steps, adjusted } = adjustedComp(
      comp({
        kind: 'asking',
        price: 19_500_00,
        miles: 45_000,
        year: 2021,
        differences: [{ label: 'No tow package', cents: 60_000 }],
      }),
      subject,
      settings,
    );
    expect(steps.map(({ label, result }) => [label, result])).toEqual([
      ['Asking price to selling price, × 0.97', 18_915_00],
      ['No tow package', 19_515_00],
      ['15,000 miles fewer, 4.5% for each 10,000, × 0.93473', 18_241_21],
      ['1 year newer, 11% for each, × 0.89583', 16_341_10],
    ]);
    expect(adjusted).toBe(16_341_10);
  });

  test('always adds up', () => {
    fc.assert(
      fc.property(anyComp, (one) => {
        const { steps, adjusted } = adjustedComp(one, subject, settings);
        expect(steps.reduce((sum, step) => sum + step.change, Number(one.price))).toBe(adjusted);
        expect(steps.at(-1)?.result ?? one.price).toBe(adjusted);
      }),
    );
  });

  test('of the same car is its own price', () => {
    expect(adjustedComp(comp({ miles: 60_000, year: 2020 }), subject, settings).steps).toEqual([]);
  });

  test('is refused when the differences take half of its price', () => {
    expect(compSchema.safeParse({ kind: 'sold', price: 100, differences: [{ label: 'x', cents: -50 }] }).success).toBe(
      false,
    );
    expect(compSchema.safeParse({ kind: 'sold', price: 100, differences: [{ label: 'x', cents: -49 }] }).success).toBe(
      true,
    );
  });
});

describe('retail from comparables', () => {
  const valued = (comps: readonly Comp[], own = guess) => retailFromComps({ guess: own, comps, subject, settings });

  test('is nothing without a guess and without a counted comparable', () => {
    expect(retailFromComps({ comps: [], subject, settings })).toBeUndefined();
    expect(retailFromComps({ comps: [comp({ leftOut: true })], subject, settings })).toBeUndefined();
  });

  test('without a guess is the geometric mean of what they say', () => {
    const two = retailFromComps({ comps: [comp({ price: 16_000_00 }), comp({ price: 25_000_00 })], subject, settings });
    expect(two?.middle).toBe(20_000_00);
    expect(two?.guessCounts).toBe(0);
  });

  test('does not depend on their order, and does not change by one that is left out', () => {
    fc.assert(
      fc.property(fc.array(anyComp, { minLength: 1, maxLength: 12 }), (comps) => {
        const one = valued(comps);
        const other = valued([...comps].reverse());
        expect(other?.middle).toBe(one?.middle);
        expect(other?.sigma).toBeCloseTo(one?.sigma ?? Number.NaN, 12);
        expect(valued(comps.filter((each) => !each.leftOut))?.sigma).toBeCloseTo(one?.sigma ?? Number.NaN, 12);
      }),
    );
  });

  test('holds its figure between its low and its high end, with forty of them too', () => {
    fc.assert(
      fc.property(fc.array(anyComp, { maxLength: 40 }), (comps) => {
        const retail = valued(comps);
        if (retail === undefined) throw new Error('a guess is always enough');
        expect(retail.low).toBeLessThan(retail.middle);
        expect(retail.high).toBeGreaterThan(retail.middle);
        expect(retail.comps).toHaveLength(comps.length);
      }),
    );
  });

  test('narrows as comparables agree', () => {
    const sigmas = [1, 2, 5, 20, 40].map((n) => valued(Array.from({ length: n }, () => comp({})))?.sigma ?? 0);
    expect(sigmas).toEqual([...sigmas].sort((a, b) => b - a));
  });

  test('is less sure of asking prices than of the same prices paid, were the ratio one', () => {
    const even = { ...settings, askingRatioPpm: ppm(1_000_000) };
    const of = (kind: string) =>
      retailFromComps({ guess, comps: [comp({ kind }), comp({ kind })], subject, settings: even });
    expect(of('asking')?.middle).toBe(of('sold')?.middle);
    expect(of('asking')?.sigma).toBeGreaterThan(of('sold')?.sigma ?? 1);
  });

  test('leans on a narrow guess more than on a wide one', () => {
    const narrow = { low: cents(17_900_00), likely: cents(18_000_00), high: cents(18_100_00) };
    const comps = [comp({ price: 22_000_00 })];
    expect(valued(comps, narrow)?.middle).toBeLessThan(valued(comps)?.middle ?? 0);
    expect(valued(comps, narrow)?.guessCounts).toBeLessThanOrEqual(49.001);
  });
});

describe('an odd comparable', () => {
  const usual = [17_600_00, 18_100_00, 18_400_00, 17_900_00].map((price) => comp({ price }));
  const oddOf = (comps: readonly Comp[]) => {
    const retail = retailFromComps({ guess, comps, subject, settings });
    return retail === undefined ? [] : oddComps(retail, guess, settings);
  };

  test('is pointed out, with what retail would be without it', () => {
    const odd = oddOf([...usual, comp({ price: 27_500_00 })]);
    expect(odd).toHaveLength(1);
    expect(odd[0]).toMatchObject({ index: 4, side: 'above' });
    expect(odd[0]?.withoutIt).toBe(retailFromComps({ guess, comps: usual, subject, settings })?.middle);
  });

  test('is none of a few that agree, and not one that is already left out', () => {
    expect(oddOf(usual)).toEqual([]);
    expect(oddOf([...usual, comp({ price: 27_500_00, leftOut: true })])).toEqual([]);
    expect(oddOf([comp({ price: 9_000_00 })])[0]).toMatchObject({ index: 0, side: 'below', withoutIt: 18_000_00 });
  });
});
