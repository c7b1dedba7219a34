import { describe, expect, test } from 'vitest';
import { type WonAndSold, winCorrection } from '../../../../src/domain/learn/corrections/win-correction.ts';
import { normalCdf, normalPdf, normalQuantile } from '../../../../src/domain/statistics/normal.ts';

/** Numbers from 0 to 1 that look random and are the same every time (Park & Miller's minimal standard). */
function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

const MARGIN = 0.1;
const ERROR = 0.08;

describe('the winner’s correction', () => {
  test('before any car is what the simulated markets say, applied at the usual margin', () => {
    const none = winCorrection([], MARGIN);
    expect(none).toMatchObject({ count: 0, averageShortfall: 0 });
    expect(none.constant).toBeCloseTo(-0.02, 12);
    expect(none.slope).toBeCloseTo(0.3, 12);
    expect(none.haircut).toBeCloseTo(1 - Math.exp(-0.02 / 0.7), 12);
  });

  test('recovers a rule that the cars follow exactly', () => {
    const cars = Array.from({ length: 400 }, (_, i): WonAndSold => {
      const x = Math.log(1 - MARGIN) - 0.15 * (i / 400);
      return { estimate: 1, paid: Math.exp(x), realised: Math.exp(-0.03 + 0.4 * (x - Math.log(1 - MARGIN))) };
    });
    const fit = winCorrection(cars, MARGIN);
    expect(fit.constant).toBeCloseTo(-0.03, 2);
    expect(fit.slope).toBeCloseTo(0.4, 1);
  });

  test('does not depend on the order of the cars', () => {
    const random = dice(3);
    const cars = Array.from({ length: 9 }, () => ({
      estimate: 1,
      paid: 0.8 + random() / 10,
      realised: 0.9 + random() / 5,
    }));
    expect(winCorrection([...cars].reverse(), MARGIN).haircut).toBeCloseTo(winCorrection(cars, MARGIN).haircut, 12);
  });

  /** One value for all; four bidders read it with the same normal error of 8% and bid a tenth below, the rivals `shade` lower still. */
  function market(shade: number): WonAndSold[] {
    const random = dice(11);
    const error = () => ERROR * normalQuantile(random());
    const cars: WonAndSold[] = [];
    for (let lot = 0; lot < 12_000; lot++) {
      const mine = error();
      const strongest = Math.max(error(), error(), error());
      if (mine <= strongest) continue;
      cars.push({ estimate: Math.exp(mine), paid: Math.exp(strongest - shade) * (1 - MARGIN), realised: 1 });
    }
    return cars;
  }

  test('takes off what tying with the strongest rival says where all allow for the curse, some 60% of the average', () => {
    const fit = winCorrection(market(0.535596 * ERROR), MARGIN);
    // Logarithms are averaged in the closed form, so a few thousandths lie between.
    expect(Math.abs(fit.averageShortfall - 1.029375 * ERROR)).toBeLessThan(0.008);
    expect(Math.abs(fit.haircut - 0.535596 * ERROR)).toBeLessThan(0.008);
    expect(fit.haircut).toBeLessThan(0.65 * fit.averageShortfall);
  });

  test('takes off more where the rivals do not allow for it (fixed point computed independently: 1.66323 errors)', () => {
    const fit = winCorrection(market(0), MARGIN);
    expect(Math.abs(fit.haircut - (1 - Math.exp(-1.66323 * ERROR)))).toBeLessThan(0.01);
  });
});

describe('the winner’s curse in errors of a reading (N = 3 of the average: Smith & Winkler 2006, 0.85; the rest computed independently)', () => {
  /** ∫ f over the line, by the trapezoid rule, which is exact to many digits for such functions. */
  const integral = (f: (z: number) => number) => {
    let sum = 0;
    for (let z = -9; z <= 9; z += 0.01) sum += f(z) * 0.01;
    return sum;
  };
  test.each([
    [3, 0.846284, 0.325735],
    [4, 1.029375, 0.535596],
    [6, 1.267206, 0.806293],
  ])(
    'with %d bidders is %d for the winner and %d for one who ties, so about three fifths are to be taken off',
    (n, average, tie) => {
      expect(integral((z) => n * z * normalPdf(z) * normalCdf(z) ** (n - 1))).toBeCloseTo(average, 6);
      const weight = (z: number) => normalPdf(z) ** 2 * normalCdf(z) ** (n - 2);
      expect(integral((z) => z * weight(z)) / integral(weight)).toBeCloseTo(tie, 6);
      expect(tie / average).toBeLessThan(0.65);
    },
  );
});
