import { formatMoney } from '../../domain/money/format-money.ts';
import type { Standing } from './standing.ts';

/** The price at which to stop, in words; or why there is none. Without a full stop. */
export function stopWords({ maxBid, missing }: Standing): string {
  if (missing.length > 0) return 'No max bid yet';
  return maxBid === null ? 'Don’t bid' : `Stop at ${formatMoney(maxBid)}`;
}
