import type { RetailForecast } from '../../../src/domain/learn/forecast.ts';
import type { RetailCase } from '../../../src/domain/learn/scores/retail-score.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { tQuantile } from '../../../src/domain/statistics/student-t.ts';
import { addDays } from '../../../src/domain/time/calendar-day.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';

export const TODAY = '2026-11-30' as LocalDate;
export const daysAgo = (days: number): LocalDate => addDays(TODAY, -days);

/** A forecast of retail around a middle, in dollars. */
export function retailOf(dollars: number, scale = 0.08, freedom = 8): RetailForecast {
  const reach = tQuantile(0.9, freedom) * scale;
  const at = (log: number) => cents(Math.round(dollars * 100 * Math.exp(log)));
  return {
    mean: at(0),
    low: at(-reach),
    high: at(reach),
    uncapped: at(0),
    scale,
    freedom,
    sigma: reach / 1.2815515655446004,
    basis: 'guess-and-comps',
  };
}

export const sale = (lot: string, dollars: number, forecast = retailOf(18_000), days = 0): RetailCase => ({
  lot,
  date: daysAgo(days),
  forecast,
  actual: cents(Math.round(dollars * 100)),
});

/** The same numbers for everybody: Lehmer's generator with Park & Miller's multiplier. */
export function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
