import { describe, expect, test } from 'vitest';
import { rangeCoverage } from '../../../scripts/number/range-coverage.ts';

const CARS = 4000;

/** Shares and errors by 400,000 cars a cell, computed independently by somebody who had not read the code. */
const CELLS = [
  [0, 0.868, 0.1167, 0.85, 0.122],
  [1, 0.886, 0.0859, 0.843, 0.0961],
  [2, 0.885, 0.0771, 0.842, 0.0875],
  [3, 0.885, 0.0726, 0.841, 0.0831],
  [5, 0.883, 0.0684, 0.844, 0.0786],
  [8, 0.883, 0.0655, 0.846, 0.0758],
] as const;

describe('a range in which eight in ten cars should sell, with a guess', () => {
  test.each(CELLS)('and %d comparables holds them', (comps, holds, rmse, holdsAsAssumed, rmseAsAssumed) => {
    const evidence = rangeCoverage(comps, 0.06, 100 + comps, CARS);
    const assumed = rangeCoverage(comps, 0.07, 200 + comps, CARS);
    for (const share of [evidence.holds, assumed.holds]) {
      expect(share).toBeGreaterThan(0.78);
      expect(share).toBeLessThan(0.9);
    }
    // The years of a model are whole here and the miles can't go below 0; that and chance move these a little.
    expect(Math.abs(evidence.holds - holds)).toBeLessThan(0.015);
    expect(Math.abs(assumed.holds - holdsAsAssumed)).toBeLessThan(0.015);
    expect(Math.abs(evidence.rmse / rmse - 1)).toBeLessThan(0.03);
    expect(Math.abs(assumed.rmse / rmseAsAssumed - 1)).toBeLessThan(0.03);
  });
});
