import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { momentsOf } from '../../../src/domain/market/belief.ts';
import { logLikelihood, TOP_MEDIAN } from '../../../src/domain/market/limit-grid.ts';
import { rivalsOf } from '../../../src/domain/market/market.ts';
import type { Reading } from '../../../src/domain/market/reading.ts';
import { normalCdf, normalQuantile } from '../../../src/domain/statistics/normal.ts';

const LOG: readonly Reading[] = [
  { says: 'strongest-at', x: -0.12 },
  { says: 'second-at', x: 0.03 },
  { says: 'second-at', x: -0.05 },
  { says: 'between', x: -0.1 },
  { says: 'strongest-above', x: -0.08 },
  { says: 'second-at', x: 0.1 },
];

describe('rivals, learned from closings', () => {
  // Computed independently: a Python prototype on the same grid.
  test.each([
    [0, 0, 0.13401, [0.1258, 0.2189, 0.3454, 0.4931, 0.6407]],
    [1, -0.07417, 0.13095, [0.2168, 0.4186, 0.6259, 0.7758, 0.8696]],
    [3, 0.01605, 0.14958, [0.0499, 0.1206, 0.2577, 0.4505, 0.6419]],
    [6, 0.04968, 0.18036, [0.0445, 0.0991, 0.1987, 0.3447, 0.5126]],
  ])('after %i closings are where the prototype has them', (count, median, spread, chances) => {
    const { belief, curve } = rivalsOf(LOG.slice(0, count));
    const moments = momentsOf(belief);
    expect(moments.median).toBeCloseTo(median, 4);
    expect(moments.spread).toBeCloseTo(spread, 4);
    [-0.15, -0.1, -0.05, 0, 0.05].forEach((x, i) => {
      expect(curve.below(x)).toBeCloseTo(chances[i] ?? 0, 3);
    });
  });

  test('do not depend on the order of the closings', () => {
    const [one, other] = [rivalsOf(LOG), rivalsOf([...LOG].reverse())];
    for (const x of [-0.2, 0, 0.2]) expect(one.curve.below(x)).toBeCloseTo(other.curve.below(x), 12);
  });

  test('stop no lower when the price asked about is higher', () => {
    const { curve } = rivalsOf(LOG);
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (x, by) => {
          expect(curve.below(x + by)).toBeGreaterThanOrEqual(curve.below(x) - 1e-12);
        },
      ),
    );
  });

  test('are higher when a lost lot’s price is read as what it is, the second price', () => {
    const naive = LOG.map(
      (reading): Reading => (reading.says === 'second-at' ? { ...reading, says: 'strongest-at' } : reading),
    );
    expect(rivalsOf(naive).curve.below(0)).toBeGreaterThan(rivalsOf(LOG).curve.below(0) + 0.1);
  });
});

describe('the highest two of five normal values', () => {
  test('have their median and densities where order statistics put them', () => {
    // Computed independently, and the mean of the highest, 1.16296, from memory of the tables of normal order statistics.
    expect(normalQuantile(0.5 ** (1 / 5))).toBeCloseTo(TOP_MEDIAN, 9);
    expect(Math.exp(logLikelihood('strongest-at', 1, 0))).toBeCloseTo(0.60621793, 8);
    expect(Math.exp(logLikelihood('second-at', 1, 0))).toBeCloseTo(0.457266347, 8);
    expect(Math.exp(logLikelihood('between', 1, 0))).toBeCloseTo(0.397484695, 8);
    expect(Math.exp(logLikelihood('strongest-above', 1, 0))).toBeCloseTo(0.57842977, 8);
  });

  test('are above a bid in one of two ways: the second is too, or the bid lies between them', () => {
    fc.assert(
      fc.property(fc.double({ min: -4, max: 4, noNaN: true }), (z) => {
        const above = Math.exp(logLikelihood('strongest-above', z, 0));
        const between = Math.exp(logLikelihood('between', z, 0));
        const p = normalCdf(z);
        const secondAbove = 1 - p ** 5 - 5 * p ** 4 * (1 - p);
        // The distribution function is exact to ten places, and five of them are multiplied.
        expect(above).toBeCloseTo(between + secondAbove, 9);
      }),
    );
  });

  test('have the mean of the highest and of the second that the tables give', () => {
    const mean = (says: Reading['says']) => {
      let sum = 0;
      for (let z = -8; z < 8; z += 0.001) sum += z * Math.exp(logLikelihood(says, z, 0)) * 0.001;
      return sum;
    };
    expect(mean('strongest-at')).toBeCloseTo(1.1629645, 5);
    expect(mean('second-at')).toBeCloseTo(0.495019, 5);
  });
});
