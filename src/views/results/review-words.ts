import { cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { ResultRow } from './result-row.ts';

/** What the price says beside our max bid of that moment: whether we stopped rightly. Empty where there is nothing to say. */
export function sayReview({ result, review, maxBid }: Pick<ResultRow, 'result' | 'review' | 'maxBid'>): string {
  if (result.ended !== 'won' && result.ended !== 'lost') return '';
  if (review.hammer === undefined) return 'at a price nobody noted';
  if (maxBid === undefined) return 'no max bid was noted';
  if (maxBid === null) return 'no price paid for us';
  const over = review.overMax ?? cents(0);
  if (result.ended === 'won') {
    if (over > 0) return `${formatMoney(over)} past our max bid`;
    return over === 0 ? 'at our max bid' : `${formatMoney(cents(-over))} under our max bid`;
  }
  if (review.wouldHavePaid) return `${formatMoney(cents(-over))} under our max bid: it would still have paid`;
  return over > 0 ? `${formatMoney(over)} past our max bid` : 'one step more was past our max bid';
}
