import { leastSquares } from '../../statistics/least-squares.ts';
import { tQuantile } from '../../statistics/student-t.ts';
import { daysBetween } from '../../time/calendar-day.ts';
import { type Case, inCaseOrder, type Looking } from './scored.ts';

/** A price beside the retail that was expected of its car; both above 0. */
export interface PriceCase extends Case {
  readonly price: number;
  readonly expected: number;
}

/** How prices moved over the last four weeks against what was expected of the cars. */
export interface PriceTrend {
  readonly direction: 'falling' | 'rising';
  /** By how much over the four weeks: −0.04 is 4% down. */
  readonly change: number;
  readonly cases: number;
}

const WEEKS = 4;
/** Fewer prices than this, or weeks without any, make no trend. */
const LEAST_PRICES = 12;
const LEAST_WEEKS = 3;

/**
 * Whether prices fell or rose over the last four weeks, by a straight line through the logs of price over expected retail:
 * that takes out which cars happened to be for sale. Said only where even a range that holds the truth in 99 of 100 cases
 * leaves out "no change".
 * @returns null where they did not move, or too few are known
 */
export function priceTrend(cases: readonly PriceCase[], { today }: Pick<Looking, 'today'>): PriceTrend | null {
  const known = inCaseOrder(cases).flatMap((one) => {
    const age = daysBetween(one.date, today);
    return age < 0 || age >= 7 * WEEKS ? [] : [{ ...one, weeksAgo: age / 7 }];
  });
  const weeks = new Set(known.map(({ weeksAgo }) => Math.floor(weeksAgo)));
  if (known.length < LEAST_PRICES || weeks.size < LEAST_WEEKS) return null;
  const fit = leastSquares(
    known.map(({ weeksAgo, price, expected }) => ({ x: [1, -weeksAgo], y: Math.log(price / expected) })),
  );
  const [, slope = 0] = fit?.coefficients ?? [];
  if (fit === undefined) return null;
  const error = Math.sqrt((fit.residualSquares / fit.freedom) * (fit.inverse[1]?.[1] ?? 0));
  if (Math.abs(slope) <= tQuantile(0.995, fit.freedom) * error) return null;
  return {
    direction: slope < 0 ? 'falling' : 'rising',
    change: Math.expm1(slope * WEEKS),
    cases: known.length,
  };
}
