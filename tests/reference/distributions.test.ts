import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lnGamma } from '../../src/domain/statistics/gamma.ts';
import { incompleteBeta } from '../../src/domain/statistics/incomplete-beta.ts';
import { normalCdf, normalPdf, normalQuantile } from '../../src/domain/statistics/normal.ts';
import { tCdf, tQuantile } from '../../src/domain/statistics/student-t.ts';

/** Relative agreement: `toBeCloseTo` measures absolute distance, which says nothing in a tail. */
function near(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.max(Math.abs(expected), 1e-300));
}

// Unless a source is named, every value below was computed independently: mpmath 1.3 with 40 digits.
describe('the normal distribution', () => {
  test.each([
    [-12, 1.77648211207768e-33],
    [-8, 6.22096057427178e-16],
    [-5, 2.86651571879194e-7],
    [-3.9, 4.80963440176027e-5],
    [-1.96, 0.0249978951482204],
    [-0.5, 0.308537538725987],
    [0, 0.5],
    [0.3, 0.617911422188953],
    [1, 0.841344746068543],
    [2.5, 0.993790334674224],
    [4.5, 0.999996602326875],
    [7, 0.99999999999872],
  ])('has %d above the share of values that it should', (x, expected) => near(normalCdf(x), expected, 1e-12));

  test.each([
    [1e-9, -5.99780701500769],
    [0.0001, -3.71901648545568],
    [0.025, -1.95996398454005],
    [0.3, -0.524400512708041],
    [0.9, 1.2815515655446],
    [0.99, 2.32634787404084],
    [0.999999, 4.7534243088229],
  ])('has its quantile at %d', (p, expected) => near(normalQuantile(p), expected, 1e-11));

  test('puts the strongest of five at the known median (computed independently)', () => {
    expect(normalQuantile(0.5 ** (1 / 5))).toBeCloseTo(1.1289975353, 10);
  });

  test('has the density whose running sum it is', () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (x) => {
        const slope = (normalCdf(x + 1e-5) - normalCdf(x - 1e-5)) / 2e-5;
        expect(slope).toBeCloseTo(normalPdf(x), 8);
      }),
    );
  });

  test('refuses a quantile of nothing or of everything', () => {
    expect(() => normalQuantile(0)).toThrow(RangeError);
    expect(() => normalQuantile(1)).toThrow(RangeError);
  });
});

describe("Student's t", () => {
  test.each([
    [-7.5, 106, 1.02661349944392e-11],
    [-2, 1, 0.147583617650433],
    [-1.2, 6, 0.137683581390076],
    [0.4, 7, 0.649459166414797],
    [1.5, 9.5, 0.916953328002679],
    [3, 30, 0.997305017967174],
  ])('at %d with %d degrees of freedom is right, tails included', (t, freedom, expected) =>
    near(tCdf(t, freedom), expected, 1e-12),
  );

  test.each([
    [0.9, 6, 1.43975574726515],
    [0.9, 9, 1.38302873839663],
    [0.975, 1, 12.7062047361747],
    [0.975, 5, 2.57058183563632],
    [0.975, 34, 2.03224450931772],
    [0.995, 8, 3.3553873313334],
    [0.75, 2.5, 0.785013682992301],
    [0.1, 6, -1.43975574726515],
  ])('has the quantile of %d with %d degrees of freedom', (p, freedom, expected) =>
    near(tQuantile(p, freedom), expected, 1e-12),
  );

  test('prints as in the published tables of its 97.5% points: 12.706, 2.571, 2.042', () => {
    expect([1, 5, 30].map((freedom) => tQuantile(0.975, freedom).toFixed(3))).toEqual(['12.706', '2.571', '2.042']);
  });

  test('turns a chance into a value and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: 1, max: 200, noNaN: true }),
        (p, freedom) => near(tCdf(tQuantile(p, freedom), freedom), p, 1e-10),
      ),
      { numRuns: 300 },
    );
  });
});

describe('the incomplete beta function', () => {
  test.each([
    [0.1, 1.6153846, 4.3846154, 0.163813994350245],
    [0.5, 3, 3, 0.5],
    [0.9, 5, 1.2, 0.675333942723951],
    [0.999, 20, 0.5, 0.842416186016361],
    [0.02, 1.0000001, 5, 0.0960791777490358],
  ])('at %d of Beta(%d, %d) is right', (x, a, b, expected) => near(incompleteBeta(x, a, b), expected, 1e-12));

  test('is 0 at the lower end and 1 at the upper', () => {
    expect(incompleteBeta(0, 2, 3)).toBe(0);
    expect(incompleteBeta(1, 2, 3)).toBe(1);
  });
});

describe('the logarithm of the gamma function', () => {
  test.each([
    [0.1, 2.25271265173421],
    [0.5, 0.5723649429247],
    [1.8, -0.0710838729143722],
    [6.2, 5.13229878783729],
    [50.5, 146.519255490721],
    [171, 706.573062245787],
  ])('at %d is right', (x, expected) => near(lnGamma(x), expected, 1e-13));
});
