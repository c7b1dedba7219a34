import { PPM, type Ppm } from '../../money/rate.ts';
import { adjustedComp } from '../../retail/adjusted-comp.ts';
import type { Comp } from '../../retail/comp.ts';
import type { Estimation } from '../../retail/estimation.ts';
import { leastSquares, type Row } from '../../statistics/least-squares.ts';
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
  const spread = settings.carSpreadPpm / PPM;
  const asking = Math.log(settings.askingRatioPpm / PPM);
  const doubts = [settings.milesSlopeDoubtPpm, settings.yearSlopeDoubtPpm, settings.askingRatioDoubtPpm].map(shareOf);
  const beliefs = [settings.milesSlopePpm / PPM, settings.yearSlopePpm / PPM, -asking];
  const seen = weighted(lots, now, halfLifeDays).map(({ one, weight }) => ({
    rows: within(one.comps, settings),
    weight,
  }));
  const observed = seen.flatMap(({ rows, weight }) => rows.map((row) => scaled(row, spread / Math.sqrt(weight))));
  const believed = beliefs.map((value, place): Row => {
    const doubt = doubts[place] ?? 1;
    return { x: beliefs.map((_, i) => (i === place ? 1 / doubt : 0)), y: value / doubt };
  });
  const fit = leastSquares([...observed, ...believed]);
  // The rows of belief tell the three apart whatever the comparables do.
  if (fit === undefined) throw new Error('three independent beliefs did not settle three figures');
  const weight = seen.reduce((sum, one) => sum + one.weight * one.rows.length, 0);
  const freedom = settings.carSpreadWeight + weight;
  const scatter = Math.max(1, (settings.carSpreadWeight + fit.residualSquares) / freedom);
  const at = (place: 0 | 1 | 2, unit: (value: number) => number): Learned => {
    const middle = fit.coefficients[place] ?? 0;
    const variance = fit.inverse[place]?.[place] ?? 0;
    const counted = seen.flatMap(({ rows }) => rows).filter(({ x }) => Math.abs(x[place] ?? 0) > 1e-12);
    return learned(
      unit(middle),
      unit(beliefs[place] ?? 0),
      (chance) => {
        const reach = tQuantile((1 + chance) / 2, freedom) * Math.sqrt(scatter * variance);
        return [unit(middle - reach), unit(middle + reach)].sort((a, b) => a - b) as [number, number];
      },
      { cases: counted.length, weight, priorShare: Math.min(1, variance / (doubts[place] ?? 1) ** 2) },
    );
  };
  const same = (value: number) => value;
  return { miles: at(0, same), years: at(1, same), asking: at(2, (value) => Math.exp(-value)) };
}

/** A doubt of nothing at all would divide by nothing; a millionth is as good. */
const shareOf = (doubt: Ppm): number => Math.max(1, doubt) / PPM;

const scaled = ({ x, y }: Row, by: number): Row => ({ x: x.map((value) => value / by), y: y / by });

/** How far each comparable of a lot is from the lot's average: log price downwards, in ten thousands of miles, age and asking. */
function within(comps: readonly Comp[], settings: Estimation): readonly Row[] {
  const plain = { ...settings, askingRatioPpm: PPM as Ppm };
  const usable = comps.flatMap((comp) =>
    comp.leftOut || comp.miles === undefined || comp.year === undefined
      ? []
      : [
          {
            y: -adjustedComp(comp, {}, plain).log,
            x: [comp.miles / 10_000, -comp.year, comp.kind === 'asking' ? -1 : 0],
          },
        ],
  );
  if (usable.length < 2) return [];
  const mean = (of: (row: Row) => number) => usable.reduce((sum, row) => sum + of(row), 0) / usable.length;
  const averages = [0, 1, 2].map((place) => mean(({ x }) => x[place] ?? 0));
  const y = mean((row) => row.y);
  return usable.map((row) => ({ y: row.y - y, x: row.x.map((value, i) => value - (averages[i] ?? 0)) }));
}
