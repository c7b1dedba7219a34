import { leastSquares, type Row } from '../statistics/least-squares.ts';

/** A car that was won and has been sold since, in amounts of the same kind: hammer prices, or what is equal to them. */
export interface WonAndSold {
  /** The hammer price at which it was expected to make nothing. Above 0. */
  readonly estimate: number;
  /** The hammer price that was paid. Above 0. */
  readonly paid: number;
  /** The hammer price at which it would have broken even, given what it brought and cost. Above 0. */
  readonly realised: number;
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
}

/** What is believed before any car was won, as mean and standard deviation, from simulated markets. */
const CONSTANT = { mean: -0.02, sd: 0.04 };
const SLOPE = { mean: 0.3, sd: 0.2 };
const RESIDUAL_SD = 0.07;

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
  const rows: Row[] = cars.map(({ estimate, paid, realised }) => ({
    x: [1 / RESIDUAL_SD, (Math.log(paid / estimate) - usual) / RESIDUAL_SD],
    y: Math.log(realised / estimate) / RESIDUAL_SD,
  }));
  rows.push({ x: [1 / CONSTANT.sd, 0], y: CONSTANT.mean / CONSTANT.sd });
  rows.push({ x: [0, 1 / SLOPE.sd], y: SLOPE.mean / SLOPE.sd });
  const [constant = 0, fitted = 0] = leastSquares(rows)?.coefficients ?? [];
  const slope = Math.min(0.8, Math.max(0, fitted));
  const shortfalls = cars.map(({ estimate, realised }) => (estimate - realised) / estimate);
  return {
    count: cars.length,
    averageShortfall: cars.length === 0 ? 0 : shortfalls.reduce((sum, one) => sum + one, 0) / cars.length,
    constant,
    slope,
    haircut: 1 - Math.exp(constant / (1 - slope)),
  };
}
