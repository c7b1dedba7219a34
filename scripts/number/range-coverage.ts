import { cents } from '../../src/domain/money/cents.ts';
import { adjustedComp } from '../../src/domain/retail/adjusted-comp.ts';
import type { Comp } from '../../src/domain/retail/comp.ts';
import { DEFAULT_ESTIMATION } from '../../src/domain/retail/estimation.ts';
import { posteriorOf } from '../../src/domain/retail/retail-from-comps.ts';
import { normalQuantile } from '../../src/domain/statistics/normal.ts';
import { tQuantile } from '../../src/domain/statistics/student-t.ts';

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
 * @param carSpread how far one car really sells from another of its kind, one standard deviation
 * @param cars 4,000 make a share known to half a point and a root mean square to a hundredth of itself
 * @returns the share of cars that sell within the range of eight in ten, and how far off its middle is
 */
export function rangeCoverage(comps: number, carSpread: number, seed: number, cars: number) {
  const normal = normals(seed);
  let within = 0;
  let squares = 0;
  let reached: number | undefined;
  for (let car = 0; car < cars; car++) {
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
  return { holds: within / cars, rmse: Math.sqrt(squares / cars) };
}
