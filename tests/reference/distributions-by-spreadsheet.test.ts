import fc from 'fast-check';
import { HyperFormula } from 'hyperformula';
import { afterAll, describe, expect, test } from 'vitest';
import { survivalOf } from '../../src/domain/carrying/days-to-sell.ts';
import { incompleteBeta } from '../../src/domain/statistics/incomplete-beta.ts';
import { chanceBelow } from '../../src/domain/statistics/lognormal.ts';
import { normalCdf, normalQuantile } from '../../src/domain/statistics/normal.ts';
import { tCdf, tQuantile } from '../../src/domain/statistics/student-t.ts';

const sheet = HyperFormula.buildEmpty({ licenseKey: 'gpl-v3' });
const name = sheet.addSheet();
afterAll(() => sheet.destroy());

/** What a spreadsheet makes of a formula. */
function formula(text: string): number {
  const value = sheet.calculateFormula(`=${text}`, sheet.getSheetId(name) ?? 0);
  if (typeof value !== 'number') throw new Error(`${text} is ${JSON.stringify(value)}`);
  return value;
}
const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => Number(value.toFixed(6)));

// HyperFormula, an independent spreadsheet; some of its distributions are good to eight digits only, so no more is asked.
describe('a spreadsheet agrees', () => {
  test('on the normal distribution and its quantiles', () => {
    fc.assert(
      fc.property(between(-6, 6), between(0.001, 0.999), (x, p) => {
        expect(normalCdf(x)).toBeCloseTo(formula(`NORM.S.DIST(${x},TRUE())`), 8);
        expect(normalQuantile(p)).toBeCloseTo(formula(`NORM.S.INV(${p})`), 6);
      }),
    );
  });

  // A spreadsheet takes whole degrees of freedom only.
  test('on Student’s t, from which the range of retail is taken', () => {
    fc.assert(
      fc.property(between(-8, 8), fc.integer({ min: 1, max: 60 }), between(0.02, 0.98), (t, freedom, p) => {
        expect(tCdf(t, freedom)).toBeCloseTo(formula(`T.DIST(${t},${freedom},TRUE())`), 7);
        expect(tQuantile(p, freedom)).toBeCloseTo(formula(`T.INV(${p},${freedom})`), 5);
      }),
    );
  });

  test('on the beta distribution, from which recon is taken', () => {
    fc.assert(
      fc.property(between(0.001, 0.999), between(1, 5), between(1, 5), (x, a, b) => {
        expect(incompleteBeta(x, a, b)).toBeCloseTo(formula(`BETA.DIST(${x},${a},${b},TRUE())`), 7);
      }),
    );
  });

  test('on the lognormal distribution with a given mean', () => {
    fc.assert(
      fc.property(between(5_000, 60_000), between(0.02, 0.4), between(0.4, 2), (mean, sigma, share) => {
        const expected = formula(`LOGNORM.DIST(${mean * share},LN(${mean})-${sigma}^2/2,${sigma},TRUE())`);
        expect(chanceBelow({ mean, sigma }, mean * share)).toBeCloseTo(expected, 7);
      }),
    );
  });

  test('on days to sell, once so many cars are known that the rate is no longer in doubt', () => {
    fc.assert(
      fc.property(between(10, 90), between(1, 200), (scale, day) => {
        const cars = 1e7;
        const survives = survivalOf({ shape: 1.25, cars, weight: cars * scale ** 1.25 });
        expect(survives(day)).toBeCloseTo(1 - formula(`WEIBULL.DIST(${day},1.25,${scale},TRUE())`), 5);
      }),
    );
  });
});
