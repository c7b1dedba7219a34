import { groupBy } from '../group-by.ts';
import { daysBetween, mondayOf } from '../time/calendar-day.ts';
import type { LocalDate } from '../time/local-date.ts';
import { dateIn } from '../time/wall-clock.ts';
import type { PastLot } from './happened.ts';
import type { Limits } from './money/hindsight.ts';
import { lostLot } from './money/lost-lot.ts';
import { type Miss, missesOf } from './money/misses.ts';
import { averageWalk, type ProfitWalk, profitWalk } from './money/profit-walk.ts';
import { type SaleWeek, saleWeek, type WeekLot } from './money/sale-week.ts';
import { type Cases, casesOf } from './scores/cases-of.ts';
import { type ChanceScore, chanceScore } from './scores/chance-score.ts';
import { type FeeScore, feeScore, reconScores } from './scores/cost-score.ts';
import { type DaysScore, daysScore } from './scores/days-score.ts';
import { type PriceTrend, priceTrend } from './scores/price-trend.ts';
import { type RetailScore, retailScore } from './scores/retail-score.ts';
import type { Looking, Scored } from './scores/scored.ts';

/** Whether the forecasts were right. */
export interface Scores {
  readonly retail: Scored<RetailScore>;
  readonly chances: Scored<ChanceScore>;
  readonly days: Scored<DaysScore>;
  readonly recon: ReturnType<typeof reconScores>;
  readonly fees: Scored<FeeScore>;
  /** How prices at the sales moved over four weeks; null where they did not clearly. */
  readonly trend: PriceTrend | null;
}

/** A car with where its money went. */
export interface WalkedCar {
  readonly past: PastLot;
  readonly walk: ProfitWalk;
}

/** Where the money went. */
export interface Money {
  /** The latest sale first. */
  readonly cars: readonly WalkedCar[];
  readonly average: ReturnType<typeof averageWalk>;
  /** The latest week first; weeks in which nothing was decided are left out. */
  readonly weeks: readonly SaleWeek[];
  readonly misses: readonly Miss[];
}

/** Scores of past lots; the order in which they come changes nothing. */
export function scoresOf(past: readonly PastLot[], looking: Looking): Scores {
  return scoresOfCases(casesOf(past), looking);
}

function scoresOfCases(cases: Cases, looking: Looking): Scores {
  return {
    retail: retailScore(cases.retail, looking),
    chances: chanceScore(cases.chances, looking),
    days: daysScore(cases.days, looking),
    recon: reconScores(cases.recon, looking),
    fees: feeScore(cases.fees),
    trend: priceTrend(cases.prices, looking),
  };
}

/** By what scores can be told apart. */
export const SCORE_BY = ['venue', 'kind', 'estimator', 'quarter'] as const;
export type ScoreBy = (typeof SCORE_BY)[number];

const KEY: Readonly<Record<ScoreBy, (one: PastLot) => string>> = {
  venue: ({ venue }) => venue,
  kind: ({ kind }) => kind,
  estimator: ({ forecast }) => forecast.estimator,
  quarter: ({ happened: { date } }) => `${date.slice(0, 4)}, quarter ${Math.ceil(Number(date.slice(5, 7)) / 3)}`,
};

/** Scores of lots told apart, by the names in their order; the latest quarter first. */
export function scoresBy(
  past: readonly PastLot[],
  by: ScoreBy,
  looking: Looking,
): readonly { readonly key: string; readonly scores: Scores }[] {
  const groups = [...groupBy(past, KEY[by])].sort(([a], [b]) => (a < b ? -1 : 1));
  return (by === 'quarter' ? groups.reverse() : groups).map(([key, own]) => ({ key, scores: scoresOf(own, looking) }));
}

/** Where the money went. */
export function moneyOf(past: readonly PastLot[], today: LocalDate): Money {
  const timely = past.filter(({ forecast }) => !forecast.late);
  const cars = timely
    .flatMap((one): WalkedCar[] => {
      const walk = profitWalk(one);
      return walk === null ? [] : [{ past: one, walk }];
    })
    .toSorted((a, b) => settledOn(b).localeCompare(settledOn(a)) || (a.past.lot < b.past.lot ? -1 : 1));
  return {
    cars,
    average: averageWalk(cars.map(({ walk }) => walk)),
    weeks: weeksOf(timely),
    misses: missesOf(past, today),
  };
}

const settledOn = ({ past: { happened } }: WalkedCar): string => happened.bought?.sale?.date ?? happened.date;

function weeksOf(past: readonly PastLot[]): SaleWeek[] {
  const weeks = [...groupBy(past, ({ happened }) => mondayOf(happened.date))].sort(([a], [b]) => (a < b ? 1 : -1));
  return weeks.flatMap(([week, own]): SaleWeek[] => {
    const decided = own.filter(({ happened: { ended } }) => ended === 'won' || ended === 'lost');
    const lots = decided.flatMap(weekLot).toSorted((a, b) => (a.lot < b.lot ? -1 : 1));
    const known = new Set(lots.map(({ lot }) => lot));
    const unknown = decided.flatMap(({ lot }) => (known.has(lot) ? [] : lot)).sort();
    if (lots.length === 0) return [];
    return [saleWeek(week, lots, limitsOf(decided, week), unknown)];
  });
}

/** More than any week could take: where a limit was not said, there is none. */
const NO_LIMIT = Number.MAX_SAFE_INTEGER;

/** The purse by which the week's first lot closed, if it was counted for that week. */
function limitsOf(lots: readonly PastLot[], week: LocalDate): Limits | null {
  const [first] = lots.toSorted((a, b) => a.happened.at - b.happened.at || (a.lot < b.lot ? -1 : 1));
  const purse = first?.purse;
  if (purse === undefined || first === undefined) return null;
  const counted = daysBetween(dateIn(first.forecast.context.setup.store.zone, purse.countedAt), week);
  if (counted > 7) return null;
  return { cash: purse.cashCents, line: purse.lineCents ?? NO_LIMIT, places: purse.places ?? NO_LIMIT };
}

/** A lot that we or another bought, with what it takes at that price. A sale that was canceled since still took the purse. */
function weekLot(one: PastLot): WeekLot[] {
  const { lot, forecast, happened } = one;
  const { deal } = forecast;
  if (deal === null) return [];
  const { cash, financed: line, profit } = deal;
  return [{ lot, won: happened.ended === 'won', cash, line, profit, lost: lostLot(one) }];
}
