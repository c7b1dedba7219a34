import { describe, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { adjustedComp } from '../../../src/domain/retail/adjusted-comp.ts';
import type { Comp } from '../../../src/domain/retail/comp.ts';
import { DEFAULT_ESTIMATION } from '../../../src/domain/retail/estimation.ts';
import { posteriorOf } from '../../../src/domain/retail/retail-from-comps.ts';
import { normalQuantile } from '../../../src/domain/statistics/normal.ts';
import { tQuantile } from '../../../src/domain/statistics/student-t.ts';

/** Cars of a cell: a share is then known to half a point, a root mean square to a hundredth of itself. */
const CARS = 4000;
const SUBJECT = { miles: 60_000, year: 2020 };
const PLAIN = { differences: [], leftOut: false };
const LEVEL = Math.log(18_000_00);

/** The same numbers every time: mulberry32, turned into normal values. */
function normals(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return normalQuantile((((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296);
  };
}

/**
 * One invented car after another: what it sells for, a guess 10% off with the range that says so, and other cars with
 * other miles and years, whose prices follow slopes that differ from car to car. Everything is a logarithm.
 */
function cell(comps: number, carSpread: number, seed: number) {
  const normal = normals(seed);
  let within = 0;
  let squares = 0;
  let reached: number | undefined;
  for (let car = 0; car < CARS; car++) {
    const sold = LEVEL + carSpread * normal();
    const likely = cents(Math.round(Math.exp(LEVEL + 0.1 * normal())));
    const reach = Math.exp(0.1 * normalQuantile(0.9));
    const guess = { low: cents(Math.round(likely / reach)), likely, high: cents(Math.round(likely * reach)) };
    const miles = 0.045 + 0.015 * normal();
    const years = 0.11 + 0.03 * normal();
    const others = Array.from({ length: comps }, (): Comp => {
      const moreMiles = Math.max(-5.9, 2 * normal());
      const yearsOlder = Math.round(1.3 * normal());
      const log = LEVEL - miles * moreMiles - years * yearsOlder + carSpread * normal();
      const price = cents(Math.round(Math.exp(log)));
      return { kind: 'sold', price, miles: Math.round(60_000 + 10_000 * moreMiles), year: 2020 - yearsOlder, ...PLAIN };
    });
    const posterior = posteriorOf(
      guess,
      others.map((comp) => adjustedComp(comp, SUBJECT, DEFAULT_ESTIMATION)),
      DEFAULT_ESTIMATION,
    );
    if (posterior === undefined) throw new Error('there is a guess');
    const off = sold - posterior.mean;
    reached ??= tQuantile(0.9, posterior.freedom);
    if (Math.abs(off) <= reached * posterior.scale) within++;
    squares += off ** 2;
  }
  return { holds: within / CARS, rmse: Math.sqrt(squares / CARS) };
}

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
    const evidence = cell(comps, 0.06, 100 + comps);
    const assumed = cell(comps, 0.07, 200 + comps);
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
