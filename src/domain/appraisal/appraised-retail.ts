import type { LotFacts } from '../lot/lot.ts';
import { type Cents, roundedCents } from '../money/cents.ts';
import { PPM } from '../money/rate.ts';
import { type AppliedCeiling, applyCeilings, cappedMean } from '../retail/ceiling.ts';
import type { Estimation } from '../retail/estimation.ts';
import { typedSpread } from '../retail/guess.ts';
import { type OddComp, oddComps } from '../retail/odd-comps.ts';
import { type RetailFromComps, retailFromComps } from '../retail/retail-from-comps.ts';
import { type RetailHint, retailHints } from '../retail/retail-hints.ts';
import { normalQuantile } from '../statistics/normal.ts';

/** What a lot will retail for with a clean title, and everything that explains it. */
export interface AppraisedRetail {
  /** The figure a bid starts from, ceilings applied. */
  readonly mean: Cents;
  /** One in ten below and one in ten above. */
  readonly low: Cents;
  readonly high: Cents;
  /** The figure in the middle before any ceiling. */
  readonly uncapped: Cents;
  /** Standard deviation of the log price before any ceiling. */
  readonly sigma: number;
  /** The lowest ceiling, where there is one. */
  readonly cap?: Cents;
  readonly basis: 'guess' | 'comps' | 'guess-and-comps';
  /** The grid, whenever a comparable was entered, counted or not. */
  readonly grid?: RetailFromComps;
  readonly odd: readonly OddComp[];
  readonly ceilings: readonly AppliedCeiling[];
  readonly hints: readonly RetailHint[];
}

/**
 * Retail from the guess, the comparables and the ceilings of a lot. A guess alone keeps the range that was typed with it;
 * a guess without a range gets the one that the setup holds for such guesses.
 * @param horizonDays the day on which an unsold car is wholesaled
 * @returns undefined with neither a guess nor a counted comparable
 */
export function appraisedRetail(
  facts: LotFacts,
  settings: Estimation,
  horizonDays: number,
): AppraisedRetail | undefined {
  const { retail: guess, comps = [], ceilings = [] } = facts;
  const subject = { miles: facts.miles, year: facts.year };
  const grid = comps.length === 0 ? undefined : retailFromComps({ guess, comps, subject, settings });
  const plain = grid !== undefined && grid.counted > 0 ? fromGrid(grid) : guess && fromGuess(guess, settings);
  if (plain === undefined) return undefined;
  const applied = applyCeilings(ceilings);
  const cap = applied.find((one) => one.lowest)?.cap;
  const uncapped = plain.mean;
  const mean = cap === undefined ? uncapped : cappedMean({ mean: uncapped, sigma: plain.sigma }, cap);
  return {
    mean,
    low: lower(plain.low, mean),
    high: cap === undefined ? plain.high : lower(plain.high, cap),
    uncapped,
    sigma: plain.sigma,
    ...(cap !== undefined && { cap }),
    basis: plain.basis,
    ...(grid && { grid }),
    odd: grid === undefined ? [] : oddComps(grid, guess, settings),
    ceilings: applied,
    hints: retailHints(subject, grid?.comps ?? [], horizonDays),
  };
}

type Plain = Pick<AppraisedRetail, 'mean' | 'low' | 'high' | 'sigma' | 'basis'>;

function fromGrid({ middle, low, high, sigma, guessCounts }: RetailFromComps): Plain {
  return { mean: middle, low, high, sigma, basis: guessCounts > 0 ? 'guess-and-comps' : 'comps' };
}

function fromGuess(guess: NonNullable<LotFacts['retail']>, settings: Estimation): Plain {
  const sigma = typedSpread(guess) ?? settings.guessSpreadPpm / PPM;
  const reach = Math.exp(sigma * normalQuantile(0.9));
  const low = guess.low ?? roundedCents(guess.likely / reach);
  const high = guess.high ?? roundedCents(guess.likely * reach);
  return { mean: guess.likely, low, high, sigma, basis: 'guess' };
}

const lower = (one: Cents, other: Cents): Cents => (one < other ? one : other);
