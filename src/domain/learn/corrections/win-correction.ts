import { leastSquares, type Row } from '../../statistics/least-squares.ts';
import { tQuantile } from '../../statistics/student-t.ts';
import type { Instant } from '../../time/instant.ts';
import { type Known, weighted } from './forgetting.ts';
import { type Learned, learned } from './learned.ts';

/** A car that was won and has been sold since, in amounts of the same kind: hammer prices, or what is equal to them. */
export interface WonAndSold {
  /** The hammer price at which it was expected to make nothing. Above 0. */
  readonly estimate: number;
  /** The hammer price that was paid. Above 0. */
  readonly paid: number;
  /** The hammer price at which it would have broken even, given what it brought and cost. Above 0. */
  readonly realised: number;
  /** What it counts for, above 0 and at most 1; 1 when left out. */
  readonly weight?: number;
}

/** How far cars that are won disappoint, and what to take off estimates for it. */
export interface WinCorrection {
  readonly count: number;
  /** Average of (estimate − realised) ÷ estimate on the cars won; not what to take off. */
  readonly averageShortfall: number;
  /** Expected log error of a car bought at the usual margin. */
  readonly constant: number;
  /** How much of a bargain, against the estimate, is only an estimate that was too high; 0 to 0.8. */
  readonly slope: number;
  /** Share of an estimate to take off before bidding; negative where estimates prove too low. */
  readonly haircut: number;
  /** Standard error of the slope before it is held between 0 and 0.8, and how far above 0 that is, in such errors. */
  readonly slopeError: number;
  readonly slopeClears: number;
  /** Standard error of the haircut, and the degrees of freedom that it rests on. */
  readonly error: number;
  readonly freedom: number;
  /** What the cars count for together. */
  readonly weight: number;
  /** How much of the haircut's certainty is that of the beliefs below, 0 to 1. */
  readonly priorShare: number;
}

/** What is believed before any car was won, as mean and standard deviation, from simulated markets. */
const CONSTANT = { mean: -0.02, sd: 0.04 };
const SLOPE = { mean: 0.3, sd: 0.2 };
const RESIDUAL = { sd: 0.07, freedom: 6 };

/**
 * The winner's correction: log realised over estimate, regressed on log price paid over estimate. On a won lot the price
 * paid is an exact reading of the strongest rival, and winning is settled by estimate and price, so a regression on that
 * price is not biased by having won, while the plain average shortfall is. The haircut is the one at which a lot won at
 * one's very last price is still worth that price (Milgrom & Weber 1982: condition on tying with the strongest rival):
 * some 60% of the average shortfall where rivals allow for the curse as well, and more than all of it where they do not.
 * @param usualMargin margin between estimate and bid, as a share of the estimate; 0 or more and below 1
 */
export function winCorrection(cars: readonly WonAndSold[], usualMargin: number): WinCorrection {
  const usual = Math.log(1 - usualMargin);
  const rows: Row[] = cars.map(({ estimate, paid, realised, weight: counts = 1 }) => {
    const sd = RESIDUAL.sd / Math.sqrt(counts);
    return { x: [1 / sd, (Math.log(paid / estimate) - usual) / sd], y: Math.log(realised / estimate) / sd };
  });
  rows.push({ x: [1 / CONSTANT.sd, 0], y: CONSTANT.mean / CONSTANT.sd });
  rows.push({ x: [0, 1 / SLOPE.sd], y: SLOPE.mean / SLOPE.sd });
  const fit = leastSquares(rows);
  // The two rows of belief tell the coefficients apart whatever the cars do.
  if (fit === undefined) throw new Error('two independent beliefs did not settle two coefficients');
  const [constant = 0, fitted = 0] = fit.coefficients;
  const slope = Math.min(0.8, Math.max(0, fitted));
  const weight = cars.reduce((sum, car) => sum + (car.weight ?? 1), 0);
  const total = (of: (car: WonAndSold) => number) =>
    weight === 0 ? 0 : cars.reduce((sum, car) => sum + (car.weight ?? 1) * of(car), 0) / weight;
  const freedom = RESIDUAL.freedom + weight;
  // Cars that scatter more than believed make the haircut less sure; ones that scatter less may be luck.
  const scatter = Math.max(1, (RESIDUAL.freedom + fit.residualSquares) / freedom);
  const error = Math.sqrt(scatter * varianceOfHaircut(constant, slope, fit.inverse));
  return {
    count: cars.length,
    averageShortfall: total(({ estimate, realised }) => (estimate - realised) / estimate),
    constant,
    slope,
    haircut: 1 - Math.exp(constant / (1 - slope)),
    slopeError: Math.sqrt(scatter * (fit.inverse[1]?.[1] ?? 0)),
    slopeClears: fitted / Math.sqrt(scatter * (fit.inverse[1]?.[1] ?? 1)),
    error,
    freedom,
    weight,
    priorShare: Math.min(1, (fit.inverse[0]?.[0] ?? 0) / CONSTANT.sd ** 2),
  };
}

/** By the delta method: how the haircut moves with either coefficient. */
function varianceOfHaircut(constant: number, slope: number, inverse: readonly (readonly number[])[]): number {
  const keeps = Math.exp(constant / (1 - slope));
  const byConstant = -keeps / (1 - slope);
  const bySlope = (byConstant * constant) / (1 - slope);
  const [[aa = 0, ak = 0] = [], [, kk = 0] = []] = inverse;
  return byConstant ** 2 * aa + 2 * byConstant * bySlope * ak + bySlope ** 2 * kk;
}

/** A car that was won and sold, with when that was known. */
export type WinCase = Known &
  Omit<WonAndSold, 'weight'> & {
    /** The max bid that stood then; where they usually are, below the estimate, is the usual margin. Above 0. */
    readonly stop: number;
  };

/** The margin that is taken where no car says otherwise. */
const USUAL_MARGIN = 0.1;

/** The haircut, and whether cars that were got cheap disappointed most. */
export interface WinLearned extends Learned {
  readonly byBargain: boolean;
}

/** The haircut from the cars that were known at `now`, older ones counting for less. */
export function winHaircut(cases: readonly WinCase[], now: Instant, halfLifeDays?: number): WinLearned {
  const known = weighted(cases, now, halfLifeDays);
  const weight = known.reduce((sum, one) => sum + one.weight, 0);
  const margin = known.reduce((sum, { one, weight: w }) => sum + w * Math.log(one.stop / one.estimate), 0) / weight;
  const usual = weight === 0 ? USUAL_MARGIN : Math.max(0, 1 - Math.exp(margin));
  const fit = winCorrection(
    known.map(({ one, weight: w }) => ({ ...one, weight: w })),
    usual,
  );
  const haircut = learned(
    fit.haircut,
    0,
    (chance) => {
      const reach = tQuantile((1 + chance) / 2, fit.freedom) * fit.error;
      return [fit.haircut - reach, fit.haircut + reach];
    },
    { cases: fit.count, weight: fit.weight, priorShare: fit.priorShare },
  );
  // Two errors: the belief beforehand stands one and a half above 0, so cars must have spoken.
  return { ...haircut, byBargain: fit.slopeClears > 2 };
}
