import { formatMoney } from '../../domain/money/format-money.ts';
import { sayAction, sayResult } from '../../domain/sale/result-words.ts';
import type { WordsFor } from './row.ts';
import type { SALE } from './sale.ts';

/** What happened at the sale, in plain words. */
export const SALE_WORDS: WordsFor<typeof SALE> = {
  'bid-noted': ({ bid }) => [sayAction(bid), bid.by && `by ${bid.by}`].filter(Boolean).join(', '),
  'result-noted': ({ result, by, bidder, maxBidCents, plannedCents }) =>
    [
      sayResult(result),
      by && (by === 'live' ? 'bid live' : 'by proxy'),
      bidder && `by ${bidder}`,
      typeof maxBidCents === 'number' && `max bid then ${formatMoney(maxBidCents)}`,
      typeof plannedCents === 'number' && `planned bid then ${formatMoney(plannedCents)}`,
      plannedCents === null && 'left out by the plan then',
    ]
      .filter(Boolean)
      .join(', '),
  'risk-accepted': ({ cents, maxBidCents, why }) =>
    `Bid of ${formatMoney(cents)} left standing over max (${maxBidCents === null ? 'no max bid' : formatMoney(maxBidCents)}): ${why}`,
};
