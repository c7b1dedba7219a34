import { daysBetween } from '../../time/calendar-day.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { HALF_LIFE_DAYS } from '../corrections/forgetting.ts';

/** A score, or how many cases are missing until there is one. */
export interface Scored<Score> {
  readonly cases: number;
  /** Fewer than so many say more about luck than about the forecasts. */
  readonly least: number;
  /** 0 once there are enough. */
  readonly missing: number;
  /** Null while cases are missing. */
  readonly score: Score | null;
}

/** Scores cases if there are enough of them. */
export function scored<Case, Score>(
  cases: readonly Case[],
  least: number,
  score: (cases: readonly Case[]) => Score,
): Scored<Score> {
  const missing = Math.max(0, least - cases.length);
  return { cases: cases.length, least, missing, score: missing > 0 ? null : score(cases) };
}

/** What every case of a score has: when it was settled, and something to tell it from others of that day. */
export interface Case {
  readonly date: LocalDate;
  readonly lot: string;
}

/** The day on which scores are looked at, and after how many days a case counts for half. */
export interface Looking {
  readonly today: LocalDate;
  readonly halfLifeDays?: number | undefined;
}

/** What a case counts for: 1 today, half after each half-life; one that is dated ahead counts as of today. */
export function weightOn({ today, halfLifeDays = HALF_LIFE_DAYS }: Looking): (one: Pick<Case, 'date'>) => number {
  return ({ date }) => 2 ** (-Math.max(0, daysBetween(date, today)) / halfLifeDays);
}

/** In one order whatever order they come in, so that sums don't depend on it, not even in their last digit. */
export function inCaseOrder<One extends Case>(cases: readonly One[]): readonly One[] {
  return cases.toSorted((a, b) => (a.date === b.date ? compare(a.lot, b.lot) : compare(a.date, b.date)));
}

const compare = (a: string, b: string): number => (a === b ? 0 : a < b ? -1 : 1);

/** The sum of a figure over cases, each with what it counts for. */
export const weightedSum = <One>(
  cases: readonly One[],
  weightOf: (one: One) => number,
  of: (one: One) => number,
): number => cases.reduce((sum, one) => sum + weightOf(one) * of(one), 0);
