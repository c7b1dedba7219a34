import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { daysBelief, medianDays, type StockCar, survivalOf } from '../../../src/domain/carrying/days-to-sell.ts';
import { kaplanMeier } from '../../../src/domain/carrying/kaplan-meier.ts';

const car = fc
  .record({ enteredAt: fc.integer({ min: 0, max: 60 }), more: fc.integer({ min: 1, max: 200 }), sold: fc.boolean() })
  .map(({ enteredAt, more, sold }): StockCar => ({ enteredAt, days: enteredAt + more, sold }));
const shuffled = (list: readonly StockCar[]) => fc.shuffledSubarray([...list], { minLength: list.length });

describe('days to sell', () => {
  test('start from the median that was typed, and never need a single sale', () => {
    expect(medianDays(daysBelief(40))).toBeCloseTo(40, 9);
    expect(survivalOf(daysBelief(40))(40)).toBeCloseTo(0.5, 12);
    expect(medianDays(daysBelief(40, [{ enteredAt: 0, days: 90, sold: false }]))).toBeGreaterThan(40);
  });

  test('do not depend on the order of the history', () => {
    fc.assert(
      fc.property(
        fc.array(car, { minLength: 1, maxLength: 30 }).chain((list) => fc.tuple(fc.constant(list), shuffled(list))),
        ([list, other]) => {
          expect(daysBelief(40, other).weight).toBeCloseTo(daysBelief(40, list).weight, 6);
          expect(kaplanMeier(other)).toEqual(kaplanMeier(list));
        },
      ),
    );
  });

  test('follow the share of cars that outlasted a day when every car was seen to its end', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 1, maxLength: 40 }), (ages) => {
        for (const step of kaplanMeier(ages.map((days) => ({ enteredAt: 0, days, sold: true })))) {
          expect(step.unsold).toBeCloseTo(ages.filter((days) => days > step.day).length / ages.length, 10);
          expect(step.low).toBeLessThanOrEqual(step.unsold);
          expect(step.high).toBeGreaterThanOrEqual(step.unsold);
        }
      }),
    );
  });

  test('get longer, never shorter, by a car that goes on standing', () => {
    fc.assert(
      fc.property(fc.array(car, { maxLength: 20 }), fc.integer({ min: 1, max: 200 }), (history, days) => {
        const standing = { enteredAt: 0, days, sold: false };
        expect(medianDays(daysBelief(40, [...history, standing]))).toBeGreaterThan(medianDays(daysBelief(40, history)));
      }),
    );
  });

  test('come to the share sold per exposure as the history grows long', () => {
    const history = Array.from(
      { length: 4000 },
      (_, i): StockCar => ({ enteredAt: 0, days: 1 + (i % 60), sold: true }),
    );
    const { cars, weight, shape } = daysBelief(40, history);
    const exposure = history.reduce((sum, one) => sum + one.days ** shape, 0);
    expect(cars / weight).toBeCloseTo(4000 / exposure, 5);
  });
});
