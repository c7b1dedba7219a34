import { formatMoney } from '../../domain/money/format-money.ts';
import type { Standing } from './standing.ts';

/** The price at which to stop, in words; or why there is none. Without a full stop. */
export function stopWords(standing: Standing): string {
  const { maxBid, missing, why } = standing;
  if (why !== undefined) return `Can’t be worked out: ${why}`;
  if (missing.length > 0) return 'No max bid yet';
  if (maxBid === null) return 'Don’t bid';
  const max = `max bid ${formatMoney(maxBid)}`;
  const planned = plannedApart(standing);
  if (planned === undefined) return `Stop at ${formatMoney(maxBid)}`;
  return planned === null ? `Left out of the plan; ${max}` : `Stop at ${formatMoney(planned)} as planned; ${max}`;
}

/** What stands where the figure would, while there is none; undefined when there is one. */
export function noStopWords({ maxBid, missing, why }: Standing): string | undefined {
  if (why !== undefined) return 'can’t be worked out';
  if (missing.length > 0) return 'not yet';
  return maxBid === null ? 'Don’t bid' : undefined;
}

/** The planned bid where it is another than the max bid: null when the plan leaves the lot out, undefined when there is nothing to say. */
export function plannedApart({ maxBid, planned }: Pick<Standing, 'maxBid' | 'planned'>): Standing['planned'] {
  return planned === maxBid ? undefined : planned;
}

/** The planned bid beside a max bid, to stand behind "plan:"; undefined where there is no plan for the lot. */
export function plannedWords({ maxBid, planned }: Pick<Standing, 'maxBid' | 'planned'>): string | undefined {
  if (planned === undefined || maxBid === null) return undefined;
  if (planned === null) return 'leave out';
  return planned === maxBid ? 'at max' : formatMoney(planned);
}
