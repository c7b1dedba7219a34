import { describe, expect, test } from 'vitest';
import { type Carrying, carryingSchema } from '../../../src/domain/carrying/carrying-rules.ts';
import { holdFactors, holdFactorsFor } from '../../../src/domain/carrying/hold-factors.ts';
import { FACTOR_UNIT } from '../../../src/domain/money/rate.ts';

const carrying = (over: object): Carrying => carryingSchema.parse({ daysToSell: { kind: 'fixed', days: 40 }, ...over });

describe('holding a car', () => {
  test('costs the known amount with curtailments, a spread of days and dear cash (computed independently)', () => {
    const terms = carrying({
      floorPlan: {
        annualRatePpm: 90_000,
        curtailments: [
          { day: 60, sharePpm: 100_000 },
          { day: 90, sharePpm: 900_000 },
        ],
      },
      cashAnnualRatePpm: 120_000,
    });
    const hold = holdFactorsFor(terms, (day) => Math.exp(-((day / 45) ** 1.25)), 120);
    expect(hold.expectedDays).toBeCloseTo(41.5053914, 7);
    expect((hold.floorFactor / FACTOR_UNIT) * 10_000).toBeCloseTo(104.19226, 3);
  });

  test('sums a geometric spread to its closed form', () => {
    const hold = holdFactorsFor(carrying({}), (day) => Math.exp(-day / 40), 120);
    expect(hold.expectedDays).toBeCloseTo((1 - Math.exp(-3)) / (1 - Math.exp(-1 / 40)), 10);
    expect(hold.expectedDays).toBeCloseTo(38.4856033, 7);
  });

  test('for a fixed number of days is plain simple interest', () => {
    const hold = holdFactors(
      carrying({
        floorPlan: { annualRatePpm: 73_000, unitFeeCents: 7500 },
        cashAnnualRatePpm: 36_500,
        lotCentsPerDay: 300,
      }),
    );
    expect(hold.floorFactor).toBe(0.008 * FACTOR_UNIT);
    expect(hold.cashFactor).toBe(0.004 * FACTOR_UNIT);
    expect(hold.flatHold).toBe(40 * 300 + 7500);
    expect(hold.expectedDays).toBe(40);
  });

  test('charges no unit fee for a car that goes in for cash', () => {
    const terms = carrying({ floorPlan: { annualRatePpm: 73_000, unitFeeCents: 7500 } });
    expect(holdFactors(terms, { funding: 'cash' }).flatHold).toBe(0);
  });
});
