import { type Cents, roundedCents } from '../../money/cents.ts';
import { tCdf } from '../../statistics/student-t.ts';
import { instant } from '../../time/instant.ts';
import type { LocalDate } from '../../time/local-date.ts';
import type { Learned } from '../corrections/learned.ts';
import { retailLevel } from '../corrections/retail-error.ts';
import type { RetailForecast } from '../forecast.ts';
import { crpsOfLognormal, crpsUnderCap } from './crps.ts';
import { type Case, inCaseOrder, type Looking, type Scored, scored, weightedSum, weightOn } from './scored.ts';
import { type Share, wilson } from './wilson.ts';

/** A car that was sold to a customer, beside the retail that was forecast as its sale closed. */
export interface RetailCase extends Case {
  readonly forecast: RetailForecast;
  /** What it sold for; above 0. */
  readonly actual: Cents;
}

export interface RetailScore {
  /** Share of the cars inside the range that was to hold eight in ten. */
  readonly inside: Share;
  readonly below: number;
  readonly above: number;
  /** Share of the cars in each fifth of the forecast, the lowest first: a fifth in each where the ranges are right. */
  readonly fifths: readonly Share[];
  /** Average of the continuous ranked probability score. */
  readonly crps: Cents;
  /** Average distance between the forecast's middle and what happened: what the score would be had there been no range. */
  readonly error: Cents;
  /** How many times the forecast the cars bring on average. */
  readonly level: Learned;
}

/** Fewer sales than this make a share that is mostly luck. */
export const LEAST_SALES = 8;

/** How good the forecasts of retail were. */
export function retailScore(cases: readonly RetailCase[], looking: Looking): Scored<RetailScore> {
  return scored(inCaseOrder(cases), LEAST_SALES, (own) => scoreOf(own, looking));
}

function scoreOf(cases: readonly RetailCase[], looking: Looking): RetailScore {
  const weightOf = weightOn(looking);
  const sum = (of: (one: RetailCase) => number) => weightedSum(cases, weightOf, of);
  const total = sum(() => 1);
  const share = (holds: (one: RetailCase) => boolean) => sum((one) => (holds(one) ? 1 : 0));
  return {
    inside: wilson(share(isInside), total),
    below: share(({ actual, forecast }) => actual < forecast.low) / total,
    above: share(({ actual, forecast }) => actual > forecast.high) / total,
    fifths: [0, 1, 2, 3, 4].map((fifth) =>
      wilson(
        sum((one) => partInFifth(one, fifth)),
        total,
      ),
    ),
    crps: roundedCents(sum(crpsOf) / total),
    error: roundedCents(sum(({ actual, forecast }) => Math.abs(actual - forecast.mean)) / total),
    level: levelOf(cases, looking),
  };
}

/** How many times the forecast the cars bring, with what is believed before any case. */
export function levelOf(cases: readonly RetailCase[], { today, halfLifeDays }: Looking): Learned {
  const outcomes = inCaseOrder(cases).map(({ date, forecast, actual }) => ({
    at: noonOf(date < today ? date : today),
    expected: forecast.mean,
    actual,
    sigma: forecast.sigma,
  }));
  return retailLevel(outcomes, noonOf(today), halfLifeDays);
}

/** A moment that stands for a day, of whichever zone. */
const noonOf = (date: LocalDate) => instant(Date.parse(`${date}T12:00Z`));

/** Whether a car sold inside the range that was to hold eight in ten; its ends belong to it. */
export const isInside = ({ actual, forecast: { low, high } }: RetailCase): boolean => low <= actual && actual <= high;

/** The chance that was given to a price below the one it brought, 0 to 1, before any ceiling. */
export function chanceOfLess({ uncapped, scale, freedom }: RetailForecast, price: number): number {
  if (scale === 0) return price > uncapped ? 1 : price < uncapped ? 0 : 0.5;
  return tCdf(Math.log(price / uncapped) / scale, freedom);
}

/**
 * How much of a case falls into a fifth of its forecast: all or nothing, except at a ceiling, where all the chance above it
 * stands on one price and the case is spread over it (Czado, Gneiting & Held 2009).
 */
function partInFifth({ forecast, actual }: RetailCase, fifth: number): number {
  const { cap } = forecast;
  if (cap === undefined || actual < cap) {
    const chance = chanceOfLess(forecast, actual);
    return Math.min(4, Math.floor(chance * 5)) === fifth ? 1 : 0;
  }
  const from = chanceOfLess(forecast, cap);
  if (from >= 1) return fifth === 4 ? 1 : 0;
  const [low, high] = [Math.max(from, fifth / 5), (fifth + 1) / 5];
  return Math.max(0, high - low) / (1 - from);
}

function crpsOf({ forecast: { uncapped, sigma, cap }, actual }: RetailCase): number {
  const spread = { mean: uncapped, sigma };
  return cap === undefined ? crpsOfLognormal(spread, actual) : crpsUnderCap(spread, cap, actual);
}
