import { PPM, type Ppm } from '../../money/rate.ts';
import { adjustedComp } from '../../retail/adjusted-comp.ts';
import type { Comp } from '../../retail/comp.ts';
import { DEFAULT_ESTIMATION, type Estimation } from '../../retail/estimation.ts';
import { leastSquares } from '../../statistics/least-squares.ts';
import { tQuantile } from '../../statistics/student-t.ts';
import type { Instant } from '../../time/instant.ts';
import { type Known, weighted } from './forgetting.ts';
import { type Learned, learned } from './learned.ts';

/** The comparables that were typed for one lot. */
export interface LotComps extends Known {
  readonly comps: readonly Comp[];
}

/** What the comparables themselves say: what 10,000 miles and a year take off, and what is paid of an asking price. */
export interface CompSlopes {
  /** Shares taken off, as in the setup: 0.045 for 4.5%. */
  readonly miles: Learned;
  readonly years: Learned;
  /** Selling price as a share of the asking price. */
  readonly asking: Learned;
}

const PLACES = [0, 1, 2] as const;
type Place = (typeof PLACES)[number];

/**
 * The setup's two slopes and its share of asking prices, corrected by every comparable that was typed. Only differences
 * between the comparables of one lot count, so that dear and cheap models do not pass for low and high mileage. The
 * setup's figures, each with its doubt, are what is believed beforehand. The three are fitted together: cars that are asked
 * for may well be the newer ones.
 */
export function compSlopes(
  lots: readonly LotComps[],
  settings: Estimation,
  now: Instant,
  halfLifeDays?: number,
): CompSlopes {
  const variance = (settings.carSpreadPpm / PPM) ** 2;
  const doubts = [settings.milesSlopeDoubtPpm, settings.yearSlopeDoubtPpm, settings.askingRatioDoubtPpm].map(shareOf);
  const beliefs = [settings.milesSlopePpm / PPM, settings.yearSlopePpm / PPM, -Math.log(settings.askingRatioPpm / PPM)];
  const seen = weighted(lots, now, halfLifeDays).map(({ one, weight }) => ({ sums: sumsOf(one.comps), weight }));
  const total = (of: (sums: CompSums) => number) => seen.reduce((sum, { sums, weight }) => sum + weight * of(sums), 0);
  const belief = (place: number) => 1 / (doubts[place] ?? 1) ** 2;
  // Normal equations: each lot is three differences about its own average, so nothing of size is lost to rounding.
  const matrix = PLACES.map((i) =>
    PLACES.map((j) => total(({ xx }) => xx[i]?.[j] ?? 0) / variance + (i === j ? belief(i) : 0)),
  );
  const right = PLACES.map((i) => total(({ xy }) => xy[i] ?? 0) / variance + belief(i) * (beliefs[i] ?? 0));
  const solve = (y: readonly number[]) =>
    leastSquares(matrix.map((x, i) => ({ x, y: y[i] ?? 0 })))?.coefficients ?? beliefs;
  const found = solve(right);
  const weight = total(({ rows }) => rows);
  const squares =
    total(({ yy, xy, xx }) => {
      const through = PLACES.reduce<number>((sum, i) => sum + (found[i] ?? 0) * (xy[i] ?? 0), 0);
      const across = PLACES.reduce<number>(
        (sum, i) => sum + (found[i] ?? 0) * PLACES.reduce<number>((s, j) => s + (xx[i]?.[j] ?? 0) * (found[j] ?? 0), 0),
        0,
      );
      return Math.max(0, yy - 2 * through + across);
    }) / variance;
  const freedom = settings.carSpreadWeight + weight;
  // Comparables that scatter more than believed make the figures less sure; ones that scatter less may be luck.
  const scatter = Math.max(1, (settings.carSpreadWeight + squares) / freedom);
  const at = (place: Place, unit: (value: number) => number): Learned => {
    const middle = found[place] ?? 0;
    const error = solve(PLACES.map((i) => (i === place ? 1 : 0)))[place] ?? 0;
    const range = (chance: number): readonly [number, number] => {
      const reach = tQuantile((1 + chance) / 2, freedom) * Math.sqrt(scatter * error);
      const ends = [unit(middle - reach), unit(middle + reach)] as const;
      return ends[0] < ends[1] ? ends : [ends[1], ends[0]];
    };
    const cases = seen.reduce((sum, { sums }) => sum + (sums.counts[place] ?? 0), 0);
    const priorShare = Math.min(1, error * belief(place));
    return learned(unit(middle), unit(beliefs[place] ?? 0), range, { cases, weight, priorShare }, place === 2 ? 1 : 2);
  };
  const same = (value: number) => value;
  return { miles: at(0, same), years: at(1, same), asking: at(2, (value) => Math.exp(-value)) };
}

/** A doubt of nothing at all would divide by nothing; a millionth is as good. */
const shareOf = (doubt: Ppm): number => Math.max(1, doubt) / PPM;

/** Sums over the comparables of one lot, each taken from their average. */
interface CompSums {
  readonly xx: readonly (readonly number[])[];
  readonly xy: readonly number[];
  readonly yy: number;
  readonly rows: number;
  /** How many comparables differ in each of the three. */
  readonly counts: readonly number[];
}

/** A replay asks for the same lots at each of a hundred weeks. */
const known = new WeakMap<readonly Comp[], CompSums>();

function sumsOf(comps: readonly Comp[]): CompSums {
  const before = known.get(comps);
  if (before !== undefined) return before;
  const rows = within(comps);
  const sums: CompSums = {
    xx: PLACES.map((i) => PLACES.map((j) => rows.reduce((sum, { x }) => sum + (x[i] ?? 0) * (x[j] ?? 0), 0))),
    xy: PLACES.map((i) => rows.reduce((sum, { x, y }) => sum + (x[i] ?? 0) * y, 0)),
    yy: rows.reduce((sum, { y }) => sum + y * y, 0),
    rows: rows.length,
    counts: PLACES.map((i) => rows.filter(({ x }) => Math.abs(x[i] ?? 0) > 1e-12).length),
  };
  known.set(comps, sums);
  return sums;
}

/** How far each comparable of a lot is from the lot's average: log price downwards, in ten thousands of miles, age and asking. */
function within(comps: readonly Comp[]) {
  const plain: Estimation = { ...DEFAULT_ESTIMATION, askingRatioPpm: PPM as Ppm };
  const usable = comps.flatMap((comp) =>
    comp.leftOut || comp.miles === undefined || comp.year === undefined
      ? []
      : [
          {
            // With nothing to adjust to, what is left is the price with its differences.
            y: -adjustedComp(comp, {}, plain).log,
            x: [comp.miles / 10_000, -comp.year, comp.kind === 'asking' ? -1 : 0],
          },
        ],
  );
  if (usable.length < 2) return [];
  const average = (of: (row: (typeof usable)[number]) => number) =>
    usable.reduce((sum, row) => sum + of(row), 0) / usable.length;
  const averages = PLACES.map((place) => average(({ x }) => x[place] ?? 0));
  const y = average((row) => row.y);
  return usable.map((row) => ({ y: row.y - y, x: row.x.map((value, i) => value - (averages[i] ?? 0)) }));
}
