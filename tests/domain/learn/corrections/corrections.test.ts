import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canceledRate } from '../../../../src/domain/learn/corrections/canceled-rate.ts';
import { compSlopes } from '../../../../src/domain/learn/corrections/comp-slopes.ts';
import { daysLearned } from '../../../../src/domain/learn/corrections/days-learned.ts';
import { weightAt } from '../../../../src/domain/learn/corrections/forgetting.ts';
import type { Learned } from '../../../../src/domain/learn/corrections/learned.ts';
import { reconRatios } from '../../../../src/domain/learn/corrections/recon-ratio.ts';
import { retailLevel, retailSpread } from '../../../../src/domain/learn/corrections/retail-error.ts';
import { winHaircut } from '../../../../src/domain/learn/corrections/win-correction.ts';
import { compSchema } from '../../../../src/domain/retail/comp.ts';
import { DEFAULT_ESTIMATION } from '../../../../src/domain/retail/estimation.ts';
import { instant } from '../../../../src/domain/time/instant.ts';
import { DAY } from '../../../../src/domain/time/units.ts';

const NOW = instant(1000 * DAY);
const at = fc.integer({ min: 0, max: 1400 }).map((day) => instant(day * DAY));
const money = fc.integer({ min: 500_000, max: 4_000_000 });

/** Each figure as a function of its cases, with a way to make cases; one row is all that the laws below need. */
const FIGURES: readonly {
  readonly name: string;
  readonly one: fc.Arbitrary<{ readonly at: number }>;
  readonly learn: (cases: readonly never[]) => readonly Learned[];
  readonly before: number;
}[] = [
  {
    name: 'retail level',
    one: fc.record({ at, expected: money, actual: money, sigma: fc.constantFrom(0.05, 0.08, 0.12) }),
    learn: (cases) => [retailLevel(cases, NOW)],
    before: 1,
  },
  {
    name: 'retail spread',
    one: fc.record({ at, expected: money, actual: money, sigma: fc.constantFrom(0.05, 0.08, 0.12) }),
    learn: (cases) => [retailSpread(cases, NOW)],
    before: 1,
  },
  {
    name: 'win correction',
    one: fc.record({ at, estimate: money, paid: money, realised: money, stop: money }),
    learn: (cases) => [winHaircut(cases, NOW)],
    before: 1 - Math.exp(-0.02 / 0.7),
  },
  {
    name: 'canceled sales',
    one: fc.record({ at, canceledAt: at }, { requiredKeys: ['at'] }),
    learn: (cases) => [canceledRate(cases, 0.03, NOW)],
    before: 1 / 31,
  },
  {
    name: 'days to sell',
    one: fc.record({ from: at, at, sold: fc.option(fc.record({ on: at, at }), { nil: undefined }) }),
    learn: (cases) => [daysLearned(cases, { medianDays: 40, record: [] }, NOW)],
    before: 40,
  },
  ...(['miles', 'years', 'asking'] as const).map((key, i) => ({
    name: `comparables: ${key}`,
    one: fc.record({
      at,
      comps: fc.array(
        fc
          .record({
            kind: fc.constantFrom('sold', 'asking'),
            price: money,
            miles: fc.integer({ min: 0, max: 200_000 }),
            year: fc.integer({ min: 2010, max: 2026 }),
          })
          .map((comp) => compSchema.parse(comp)),
        { maxLength: 5 },
      ),
    }),
    learn: (cases: readonly never[]) => [compSlopes(cases, DEFAULT_ESTIMATION, NOW)[key]],
    before: [0.045, 0.11, 0.97][i] ?? 0,
  })),
];

describe.each(FIGURES)('the correction of $name', ({ one, learn, before }) => {
  const figure = (cases: readonly unknown[]) => {
    const [first] = learn(cases as readonly never[]);
    if (first === undefined) throw new Error('nothing learned');
    return first;
  };

  test('without a case is what was believed beforehand, all of it', () => {
    const none = figure([]);
    expect(none.value).toBeCloseTo(before, 9);
    expect(none).toMatchObject({ cases: 0, weight: 0, clear: false });
    expect(none.priorShare).toBeCloseTo(1, 12);
  });

  test('does not depend on the order of the cases', () => {
    fc.assert(
      fc.property(fc.array(one, { maxLength: 12 }), (cases) => {
        const [forth, back] = [figure(cases), figure([...cases].reverse())];
        expect(back.value).toBeCloseTo(forth.value, 8);
        expect(back.low).toBeCloseTo(forth.low, 6);
      }),
      { numRuns: 40 },
    );
  });

  test('can’t see what becomes known later', () => {
    fc.assert(
      fc.property(fc.array(one, { maxLength: 8 }), fc.array(one, { minLength: 1, maxLength: 4 }), (known, planted) => {
        const later = planted.map((each) => ({ ...each, at: instant(NOW + DAY) }));
        expect(figure([...known, ...later])).toEqual(figure(known));
      }),
      { numRuns: 40 },
    );
  });

  test('has its value in its range, and a share of belief from 0 to 1 that more cases don’t raise', () => {
    fc.assert(
      fc.property(fc.array(one, { maxLength: 12 }), (cases) => {
        const { value, low, high, priorShare } = figure(cases);
        expect(low).toBeLessThanOrEqual(value);
        expect(high).toBeGreaterThanOrEqual(value);
        expect(priorShare).toBeGreaterThanOrEqual(0);
        expect(priorShare).toBeLessThanOrEqual(1 + 1e-9);
      }),
      { numRuns: 40 },
    );
  });
});

describe('with cases without end', () => {
  const many = <One>(list: readonly One[]) => Array.from({ length: 20_000 }, () => list).flat();

  test('the retail level goes to the mean of a lognormal, and its spread to the root mean square', () => {
    const outcomes = many([0.9, 1.05].map((ratio) => ({ at: NOW, expected: 1, actual: ratio, sigma: 0.1 })));
    const [mean, half] = [(Math.log(0.9) + Math.log(1.05)) / 2, (Math.log(1.05) - Math.log(0.9)) / 2];
    expect(retailLevel(outcomes, NOW).value).toBeCloseTo(Math.exp(mean + half ** 2 / 2), 4);
    expect(retailSpread(outcomes, NOW).value).toBeCloseTo(half / 0.1, 3);
  });

  test('the canceled rate goes to its share', () => {
    expect(
      canceledRate(
        many([true, false, false, false].map((canceled) => ({ at: NOW, ...(canceled && { canceledAt: NOW }) }))),
        0,
        NOW,
      ).value,
    ).toBeCloseTo(0.25, 3);
  });
});

describe('forgetting', () => {
  test('halves a case every 180 days, or as often as the dealer says', () => {
    expect(weightAt(NOW)({ at: instant(NOW - 180 * DAY) })).toBeCloseTo(0.5, 12);
    expect(weightAt(NOW)({ at: instant(NOW - 360 * DAY) })).toBeCloseTo(0.25, 12);
    expect(weightAt(NOW, 90)({ at: instant(NOW - 180 * DAY) })).toBeCloseTo(0.25, 12);
    expect(weightAt(NOW)({ at: NOW })).toBe(1);
  });

  test('lets newer cars count for more than older ones', () => {
    const outcome = (days: number, actual: number) => ({
      at: instant(NOW - days * DAY),
      expected: 1,
      actual,
      sigma: 0.1,
    });
    const fell = [
      ...Array.from({ length: 20 }, () => outcome(540, 1)),
      ...Array.from({ length: 20 }, () => outcome(1, 0.9)),
    ];
    const rose = fell.map((one) => ({ ...one, at: one.actual === 1 ? NOW : instant(NOW - 540 * DAY) }));
    expect(retailLevel(fell, NOW).value).toBeLessThan(0.93);
    expect(retailLevel(rose, NOW).value).toBeGreaterThan(0.97);
  });
});

describe('recon ratios', () => {
  test('are kept apart by line, whatever its capitals and signs, and a line of one case is mostly belief', () => {
    const line = (label: string, actual: number) => ({ at: NOW, label, expected: 100, actual });
    const found = reconRatios([line('Tires', 150), line('tires ', 140), line('TIRES', 160), line('Paint', 300)], NOW);
    expect(found.map(({ label, cases }) => [label, cases])).toEqual([
      ['TIRES', 3],
      ['Paint', 1],
    ]);
    expect(found[0]?.value).toBeGreaterThan(1.1);
    expect(found[1]?.priorShare).toBeCloseTo(5 / 6, 12);
  });
});
