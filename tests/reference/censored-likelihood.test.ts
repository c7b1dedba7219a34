import { expect, test } from 'vitest';
import { lnNormalCdf } from '../../src/domain/market/ln-normal-cdf.ts';
import { normalPdf } from '../../src/domain/statistics/normal.ts';

/**
 * Tobin's households (Econometrica 26, 1958): durable goods bought, age, liquidity, as the `tobin` data of R's survival package carry
 * them. A price that is not known is to the rivals what goods that were not bought are here: all that counts is the chance of it.
 */
const HOUSEHOLDS: readonly (readonly [durable: number, age: number, quant: number])[] = [
  [0, 57.7, 236],
  [0.7, 50.9, 283],
  [0, 48.5, 207],
  [0, 41.7, 220],
  [0, 47.7, 238],
  [0, 59.8, 216],
  [0, 44.3, 284],
  [3.7, 45.1, 221],
  [0, 51.7, 275],
  [3, 50, 269],
  [10.4, 46.8, 207],
  [0, 58, 249],
  [0, 58.9, 246],
  [0, 40, 277],
  [1.5, 34.1, 231],
  [0, 39.9, 219],
  [0, 33.4, 240],
  [3.5, 48.1, 266],
  [6.1, 46.6, 214],
  [0, 53.1, 251],
];

/** Log-likelihood of a normal that is cut off below 0, with the parts that the readings of closings are made of. */
function logLikelihood([base, age, quant, lnScale]: readonly [number, number, number, number]): number {
  return HOUSEHOLDS.reduce((sum, [durable, years, liquid]) => {
    const z = (durable - base - age * years - quant * liquid) / Math.exp(lnScale);
    return sum + (durable > 0 ? Math.log(normalPdf(z)) - lnScale : lnNormalCdf(z));
  }, 0);
}

/** Akaike's criterion, by which the fits are published. */
const aic = (estimates: Parameters<typeof logLikelihood>[0], parameters: number): number =>
  2 * parameters - 2 * logLikelihood(estimates);

test.each([
  // The fits as the VGAM package prints them, and with more digits as a Python prototype found them.
  ['a constant alone', [-2.22743946, 0, 0, 1.78259465], 2, 62.984, [-2.227, 0, 0, 1.783]],
  ['age and liquidity', [15.14486731, -0.12905929, -0.04554166, 1.71785093], 4, 65.88, [15.145, -0.129, -0.046, 1.718]],
] as const)(
  'the censored likelihood of %s is Tobin’s, and highest at the published estimates',
  (_, best, count, published, rounded) => {
    expect(aic(best, count)).toBeCloseTo(published, 2.5);
    expect(best.map((estimate) => Math.round(estimate * 1_000) / 1_000)).toEqual(rounded);
    const most = logLikelihood(best);
    for (const i of [0, 1, 2, 3].filter((which) => best[which] !== 0)) {
      for (const by of [-0.01, 0.01]) {
        const moved = best.map((estimate, j) => (j === i ? estimate * (1 + by) : estimate));
        expect(logLikelihood(moved as unknown as Parameters<typeof logLikelihood>[0])).toBeLessThan(most);
      }
    }
  },
);
