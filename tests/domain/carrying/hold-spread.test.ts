import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { carryingSchema } from '../../../src/domain/carrying/carrying-rules.ts';
import { holdFactors } from '../../../src/domain/carrying/hold-factors.ts';
import { holdSpread } from '../../../src/domain/carrying/hold-spread.ts';
import { FACTOR_UNIT } from '../../../src/domain/money/rate.ts';

const carrying = fc
  .record({
    annualRatePpm: fc.integer({ min: 0, max: 300_000 }),
    unitFeeCents: fc.integer({ min: 0, max: 20_000 }),
    dayCount: fc.constantFrom('actual/365', 'actual/360', '30/360'),
    first: fc.integer({ min: 1, max: 90 }),
    share: fc.integer({ min: 0, max: 500_000 }),
    cash: fc.integer({ min: 0, max: 300_000 }),
    lotCentsPerDay: fc.integer({ min: 0, max: 2000 }),
    kind: fc.constantFrom('fixed', 'median'),
    days: fc.integer({ min: 1, max: 150 }),
    horizonDays: fc.integer({ min: 1, max: 200 }),
  })
  .map(({ annualRatePpm, unitFeeCents, dayCount, first, share, cash, lotCentsPerDay, kind, days, horizonDays }) =>
    carryingSchema.parse({
      floorPlan: {
        annualRatePpm,
        unitFeeCents,
        dayCount,
        curtailments: [
          { day: first, sharePpm: share },
          { day: first + 30, sharePpm: share },
        ],
      },
      cashAnnualRatePpm: cash,
      lotCentsPerDay,
      daysToSell: { kind, days },
      horizonDays,
    }),
  );

describe('the spread of holding cost', () => {
  test('has exactly the mean that the two factors and the flat part say', () => {
    fc.assert(
      fc.property(carrying, fc.constantFrom('floor' as const, 'cash' as const), (terms, funding) => {
        const cases = holdSpread(terms, { funding });
        const mean = (of: (one: (typeof cases)[number]) => number) =>
          cases.reduce((sum, one) => sum + one.chance * of(one), 0);
        const factors = holdFactors(terms, { funding });
        expect(mean(() => 1)).toBeCloseTo(1, 10);
        expect(Math.abs(mean((one) => one.floor) * FACTOR_UNIT - factors.floorFactor)).toBeLessThan(0.6);
        expect(Math.abs(mean((one) => one.cash) * FACTOR_UNIT - factors.cashFactor)).toBeLessThan(0.6);
        expect(Math.abs(mean((one) => one.flat) - factors.flatHold)).toBeLessThan(0.6);
      }),
    );
  });

  test('is one case when the days are fixed, none of it when they are none', () => {
    const fixed = (days: number) =>
      carryingSchema.parse({ cashAnnualRatePpm: 36_500, lotCentsPerDay: 100, daysToSell: { kind: 'fixed', days } });
    expect(holdSpread(fixed(10))).toEqual([{ chance: 1, floor: 0, cash: expect.closeTo(0.001, 12), flat: 1000 }]);
    expect(holdSpread(fixed(0))).toEqual([{ chance: 1, floor: 0, cash: 0, flat: 0 }]);
  });
});

describe('holding a car longer', () => {
  test('never costs less', () => {
    fc.assert(
      fc.property(carrying, fc.double({ min: 1, max: 3, noNaN: true }), (terms, stretch) => {
        const usual = holdFactors(terms);
        const longer = holdFactors(terms, { stretch });
        expect(longer.floorFactor).toBeGreaterThanOrEqual(usual.floorFactor);
        expect(longer.cashFactor).toBeGreaterThanOrEqual(usual.cashFactor);
        expect(longer.flatHold).toBeGreaterThanOrEqual(usual.flatHold);
        expect(longer.expectedDays).toBeGreaterThanOrEqual(usual.expectedDays);
      }),
    );
  });

  test('at the dearest terms the setup allows still gives a number', () => {
    const dearest = carryingSchema.parse({
      floorPlan: { annualRatePpm: 10_000_000, dayCount: 'actual/360' },
      cashAnnualRatePpm: 10_000_000,
      lotCentsPerDay: 1_000_000_000_000,
      daysToSell: { kind: 'fixed', days: 3650 },
    });
    expect(holdFactors(dearest).floorFactor).toBe(100 * FACTOR_UNIT);
  });
});
