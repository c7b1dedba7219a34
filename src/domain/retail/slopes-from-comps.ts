import { PPM, type Ppm, ppm } from '../money/rate.ts';
import { leastSquares, type Row } from '../statistics/least-squares.ts';
import { adjustedComp } from './adjusted-comp.ts';
import type { Comp } from './comp.ts';
import type { Estimation } from './estimation.ts';

/** What the comparables themselves say mileage and age take off, in the terms of the setup. */
export interface LearnedSlopes
  extends Pick<Estimation, 'milesSlopePpm' | 'milesSlopeDoubtPpm' | 'yearSlopePpm' | 'yearSlopeDoubtPpm'> {
  /** Comparables that told something: those of a lot with another beside it. */
  readonly comps: number;
}

/**
 * The setup's two slopes, corrected by every comparable that was typed for any lot. Only differences between the
 * comparables of one lot count, so that dear and cheap models do not pass for low and high mileage; the setup's slopes,
 * each with its doubt, are what is believed beforehand.
 * @param lots the comparables of each lot
 */
export function slopesFromComps(lots: readonly (readonly Comp[])[], settings: Estimation): LearnedSlopes {
  const spread = settings.carSpreadPpm / PPM;
  const observed = lots.flatMap((comps) => differencesWithin(comps, settings));
  const rows: Row[] = observed.map(({ x, y }) => ({ x: x.map((value) => value / spread), y: y / spread }));
  const belief = (slope: Ppm, doubt: Ppm, place: 0 | 1): Row => {
    // A slope of no doubt at all would divide by nothing; a millionth is as good.
    const weight = PPM / Math.max(1, doubt);
    return { x: place === 0 ? [weight, 0] : [0, weight], y: (slope / PPM) * weight };
  };
  rows.push(belief(settings.milesSlopePpm, settings.milesSlopeDoubtPpm, 0));
  rows.push(belief(settings.yearSlopePpm, settings.yearSlopeDoubtPpm, 1));
  const fit = leastSquares(rows);
  // The two rows of belief tell the slopes apart whatever the comparables do.
  if (fit === undefined) throw new Error('two independent beliefs did not settle two slopes');
  const share = (value: number | undefined) => ppm(Math.min(PPM, Math.max(0, Math.round((value ?? 0) * PPM))));
  return {
    milesSlopePpm: share(fit.coefficients[0]),
    milesSlopeDoubtPpm: share(Math.sqrt(fit.inverse[0]?.[0] ?? 0)),
    yearSlopePpm: share(fit.coefficients[1]),
    yearSlopeDoubtPpm: share(Math.sqrt(fit.inverse[1]?.[1] ?? 0)),
    comps: observed.length,
  };
}

/** How far each comparable of a lot is from the lot's average: in log price, tens of thousands of miles, and age. */
function differencesWithin(comps: readonly Comp[], settings: Estimation): readonly Row[] {
  const usable = comps.flatMap((comp) =>
    comp.leftOut || comp.miles === undefined || comp.year === undefined
      ? []
      : [{ y: -adjustedComp(comp, {}, settings).log, miles: comp.miles / 10_000, age: -comp.year }],
  );
  if (usable.length < 2) return [];
  const mean = (of: (one: (typeof usable)[number]) => number) =>
    usable.reduce((sum, one) => sum + of(one), 0) / usable.length;
  const [y, miles, age] = [mean((one) => one.y), mean((one) => one.miles), mean((one) => one.age)];
  return usable.map((one) => ({ y: one.y - y, x: [one.miles - miles, one.age - age] }));
}
