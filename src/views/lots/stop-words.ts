import { formatMoney } from '../../domain/money/format-money.ts';
import type { Standing } from './standing.ts';

/** The price at which to stop, in words; or why there is none. Without a full stop. */
export function stopWords({ maxBid, missing, why }: Standing): string {
  if (why !== undefined) return `Can’t be worked out: ${why}`;
  if (missing.length > 0) return 'No max bid yet';
  return maxBid === null ? 'Don’t bid' : `Stop at ${formatMoney(maxBid)}`;
}

/** What stands where the figure would, while there is none; undefined when there is one. */
export function noStopWords({ maxBid, missing, why }: Standing): string | undefined {
  if (why !== undefined) return 'can’t be worked out';
  if (missing.length > 0) return 'not yet';
  return maxBid === null ? 'Don’t bid' : undefined;
}
