import * as z from 'zod/mini';
import { groupBy } from '../../domain/group-by.ts';
import { type ResultTotals, totalResults } from '../../domain/sale/result-totals.ts';
import { ENDING_WORDS } from '../../domain/sale/result-words.ts';
import { sayDate } from '../../domain/time/say-time.ts';
import type { ResultRow } from './result-row.ts';

export const OUTCOMES = [
  'all',
  'won',
  'canceled',
  'lost',
  'within-reach',
  'not-sold',
  'pending',
  'withdrawn',
  'not-watched',
] as const;
export const SORTS = ['latest', 'over-max', 'hammer', 'car'] as const;
export const GROUPS = ['week', 'venue', 'outcome'] as const;

/** What the Results list shows, and how; kept by name as a saved view. */
export const resultViewSchema = z.strictObject({
  outcome: z.enum(OUTCOMES),
  /** A venue's name, or '' for all. */
  venue: z.string(),
  /** The Monday of a week, or '' for all. */
  week: z.string(),
  search: z.string(),
  sort: z.enum(SORTS),
  group: z.enum(GROUPS),
});
export type ResultView = z.infer<typeof resultViewSchema>;
export type GroupKey = ResultView['group'];

export const FIRST_VIEW: ResultView = {
  outcome: 'all',
  venue: '',
  week: '',
  search: '',
  sort: 'latest',
  group: 'week',
};

/** The rows that a view shows, in its order; ties fall back to the latest first, then to the id. */
export function rowsInView(rows: readonly ResultRow[], view: ResultView): ResultRow[] {
  const words = view.search.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = rows.filter(
    (row) =>
      fits(row, view.outcome) &&
      (view.venue === '' || row.venue === view.venue) &&
      (view.week === '' || row.week === view.week) &&
      words.every((word) => row.haystack.includes(word)),
  );
  return shown.sort((a, b) => compare(a, b, view.sort) || b.at - a.at || (a.lot.id < b.lot.id ? -1 : 1));
}

function fits({ result, review, canceled }: ResultRow, outcome: ResultView['outcome']): boolean {
  if (outcome === 'all') return true;
  if (canceled || outcome === 'canceled') return canceled && outcome === 'canceled';
  return outcome === 'within-reach' ? review.wouldHavePaid === true : result.ended === outcome;
}

/** Rows with nothing to sort by come last. */
function compare(a: ResultRow, b: ResultRow, sort: ResultView['sort']): number {
  switch (sort) {
    case 'latest':
      return 0;
    case 'over-max':
      return (b.review.overMax ?? -Infinity) - (a.review.overMax ?? -Infinity) || 0;
    case 'hammer':
      return (b.review.hammer ?? -1) - (a.review.hammer ?? -1);
    case 'car':
      return a.title.localeCompare(b.title, 'en-US');
  }
}

/** What a win is called whose sale was canceled. */
export const CANCELED_WORDS = 'Sale canceled';

export interface ResultGroup {
  readonly key: string;
  readonly label: string;
  readonly totals: ResultTotals;
}

/** The totals of each week, venue or outcome among the rows: weeks latest first, the others by their name. */
export function groupsOf(rows: readonly ResultRow[], by: GroupKey): ResultGroup[] {
  return [...groupBy(rows, (row) => keyOf(row, by))]
    .sort(([a], [b]) => (by === 'week' ? (a < b ? 1 : -1) : a.localeCompare(b, 'en-US')))
    .map(([key, members]) => ({ key, label: labelOf(members[0], by), totals: totalResults(members) }));
}

function keyOf({ week, venue, result, canceled }: ResultRow, by: GroupKey): string {
  return by === 'week' ? week : by === 'venue' ? venue : canceled ? 'canceled' : result.ended;
}

function labelOf(row: ResultRow | undefined, by: GroupKey): string {
  if (row === undefined) return '';
  return by === 'week'
    ? sayWeek(row.week)
    : by === 'venue'
      ? row.venue
      : row.canceled
        ? CANCELED_WORDS
        : ENDING_WORDS[row.result.ended];
}

/** "Week of Mon Nov 23, 2026". */
export const sayWeek = (week: ResultRow['week']): string => `Week of ${sayDate(week)}, ${week.slice(0, 4)}`;
