import { describe, expect, test } from 'vitest';
import { daysBelief, meanDays, medianDays, type StockCar, survivalOf } from '../../src/domain/carrying/days-to-sell.ts';
import { kaplanMeier, medianOf, restrictedMean } from '../../src/domain/carrying/kaplan-meier.ts';

const cars = (text: string): StockCar[] =>
  text.split(',').map((word) => ({ enteredAt: 0, days: Number.parseInt(word, 10), sold: !word.endsWith('+') }));

describe('the share still unsold', () => {
  // Freireich et al. 1963, 6-MP group, weeks (+ = censored); the table is printed in many textbooks of survival analysis.
  const freireich = kaplanMeier(cars('6,6,6,6+,7,9+,10,10+,11+,13,16,17+,19+,20+,22,23,25+,32+,32+,34+,35+'));

  test.each([
    [6, 21, 3, '0.857', '0.0764', '0.620', '0.952'],
    [7, 17, 1, '0.807', '0.0869', '0.563', '0.923'],
    [10, 15, 1, '0.753', '0.0963', '0.503', '0.889'],
    [13, 12, 1, '0.690', '0.1068', '0.432', '0.849'],
    [16, 11, 1, '0.627', '0.1141', '0.368', '0.805'],
    [22, 7, 1, '0.538', '0.1282', '0.268', '0.747'],
    [23, 6, 1, '0.448', '0.1346', '0.188', '0.680'],
  ])('at %d is as published by Freireich', (day, atRisk, sold, unsold, error, low, high) => {
    const step = freireich.find((one) => one.day === day);
    expect(step).toMatchObject({ atRisk, sold });
    expect(step?.unsold.toFixed(3)).toBe(unsold);
    expect(step?.standardError.toFixed(4)).toBe(error);
    expect(step?.low.toFixed(3)).toBe(low);
    expect(step?.high.toFixed(3)).toBe(high);
  });

  test('has the published median, and the known area under it (computed independently)', () => {
    expect(freireich).toHaveLength(7);
    expect(medianOf(freireich)).toBe(23);
    expect(restrictedMean(freireich, 23)).toBeCloseTo(17.909244, 6);
    expect(restrictedMean(freireich, 35)).toBeCloseTo(23.287395, 6);
  });

  test('counts a car that was old when the record began only from then on (worked by hand)', () => {
    const steps = kaplanMeier([
      { enteredAt: 0, days: 20, sold: true },
      { enteredAt: 30, days: 50, sold: true },
      { enteredAt: 0, days: 40, sold: true },
    ]);
    expect(steps.map((step) => [step.day, step.unsold])).toEqual([
      [20, 1 / 2],
      [40, 1 / 4],
      [50, 0],
    ]);
  });
});

describe('what the dealer believes about days to sell', () => {
  const stock = cars('20,35,60,90+');

  test('is moved by his stock as it should be (computed independently)', () => {
    const before = daysBelief(40, [], { priorCars: 4 });
    expect(before.weight).toBeCloseTo(531.66433, 5);
    expect(meanDays(before)).toBeCloseTo(57.018248, 6);
    const after = daysBelief(40, stock, { priorCars: 4 });
    expect(after.cars).toBe(7);
    expect(after.weight).toBeCloseTo(1103.285444, 6);
    expect(survivalOf(after)(30)).toBeCloseTo(0.6492983, 7);
    expect(survivalOf(after)(60)).toBeCloseTo(0.3728475, 7);
    expect(medianDays(after)).toBeCloseTo(44.470897, 6);
    expect(meanDays(after)).toBeCloseTo(59.549144, 6);
  });

  test('with a constant rate is the exponential-gamma case (computed independently)', () => {
    const after = daysBelief(40, stock, { priorCars: 4, shape: 1 });
    expect(after.weight).toBeCloseTo(416.4085403, 7);
    expect(survivalOf(after)(30)).toBeCloseTo(0.6144831, 7);
    expect(meanDays(after)).toBeCloseTo(69.401423, 6);
    expect(meanDays(after)).toBeCloseTo(after.weight / (after.cars - 1), 9);
  });

  test('comes to the exponential rate 9/359 of the 6-MP group when the median counts for nothing (computed independently)', () => {
    const history = cars('6,6,6,6+,7,9+,10,10+,11+,13,16,17+,19+,20+,22,23,25+,32+,32+,34+,35+');
    const after = daysBelief(1, history, { priorCars: 1e-3, shape: 1 });
    expect(after.cars / after.weight).toBeCloseTo(9 / 359, 4);
  });
});
