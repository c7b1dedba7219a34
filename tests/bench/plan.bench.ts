import { cents } from '../../src/domain/money/cents.ts';
import { solve } from '../../src/domain/plan/solve.ts';
import { type Bidding, stageOf } from '../../src/domain/plan/stage.ts';
import { atMost, type BenchRow, timeBoth } from './run-bench.ts';

const SPACE = { cash: 2_000, lines: 1, places: 20 };
const POINTS = 24;
const CELL = 25_000;
const LOTS = 200;

/** A lot whose prices cost 30 to 70 cells. */
function bidding(i: number): Bidding {
  const numbers = (of: (j: number) => number) => Float64Array.from({ length: POINTS }, (_, j) => of(j));
  const cash = numbers((j) => (30 + (i % 17) + j) * CELL);
  return {
    points: {
      prices: Array.from({ length: POINTS }, (_, j) => cents((j + 1) * CELL)),
      chance: numbers((j) => 0.002 + 0.0001 * ((i + j) % 7)),
      ways: [{ cash, line: numbers(() => 0), profit: numbers((j) => 400_000 - 10_000 * j - 1_000 * (i % 11)) }],
      falling: true,
    },
    rule: 'best',
    bound: -1,
  };
}

const lots = (count: number) => Array.from({ length: count }, (_, i) => bidding(i));

/** The recursion as the plan runs it, from the lots' price points. */
function ours(given: readonly Bidding[]): number {
  const cells = { cash: CELL, line: CELL };
  const batches = given.map((lot) => ({ stages: [stageOf(lot, cells, POINTS, 'within')], income: 0, freed: 0 }));
  return solve(batches, { space: SPACE, keptCell: 0 }, true).at(-1) ?? 0;
}

/** The bare loop over typed arrays. */
function bare(given: readonly Bidding[]): number {
  const { cash: width, places } = SPACE;
  let next = new Float64Array(width * (places + 1));
  let out = new Float64Array(next.length);
  for (const { points } of [...given].reverse()) {
    const [way] = points.ways;
    if (way === undefined) continue;
    const cost = Int32Array.from(way.cash, (cash) => Math.ceil(cash / CELL));
    out.set(next);
    for (let k = 1; k <= places; k++) {
      const cur = next.subarray(k * width, (k + 1) * width);
      const low = next.subarray((k - 1) * width, k * width);
      const into = out.subarray(k * width, (k + 1) * width);
      for (let j = 0; j < cost.length; j++) {
        const [c, s, f] = [cost[j] as number, way.profit[j] as number, points.chance[j] as number];
        for (let b = c; b < width; b++) {
          const gain = s + (low[b - c] as number) - (cur[b] as number);
          if (gain > 0) into[b] = (into[b] as number) + f * gain;
        }
      }
    }
    [next, out] = [out, next];
  }
  return next.at(-1) ?? 0;
}

/** The plan's recursion against the bare loop, and against itself with half the lots. */
export async function run(): Promise<BenchRow[]> {
  const [all, half] = [lots(LOTS), lots(LOTS / 2)];
  if (Math.abs(ours(all) - bare(all)) > 1e-6) throw new Error('the two do not come to the same');
  const plan = await timeBoth(
    () => ours(all),
    () => bare(all),
  );
  const growth = await timeBoth(
    () => ours(all),
    () => {
      ours(half);
      ours(half);
    },
  );
  const size = `${LOTS} lots × ${SPACE.cash.toLocaleString('en-US')} cells × ${SPACE.places} places × ${POINTS} prices`;
  return [
    atMost(1.5, `a plan of ${size}, against the bare loop`, plan.ours, plan.rival),
    atMost(1.3, `the same, against twice ${LOTS / 2} lots`, growth.ours, growth.rival),
  ];
}
