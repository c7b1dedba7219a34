import { cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { ResultRow } from './result-row.ts';

/** What the price says beside our max bid of that moment: whether we stopped rightly. Empty where there is nothing to say. */
export function sayReview({
  result,
  review,
  canceled,
  maxBid,
}: Pick<ResultRow, 'result' | 'review' | 'canceled' | 'maxBid'>): string {
  if (canceled) return '';
  if (result.ended !== 'won' && result.ended !== 'lost') return '';
  if (review.hammer === undefined) return 'price not recorded';
  if (maxBid === undefined) return 'no max bid recorded';
  if (maxBid === null) return 'not worth bidding';
  const over = review.overMax ?? cents(0);
  if (result.ended === 'won') {
    if (over > 0) return `${formatMoney(over)} over our max`;
    return over === 0 ? 'at our max' : `${formatMoney(cents(-over))} under our max`;
  }
  if (review.wouldHavePaid) return `${formatMoney(cents(-over))} below our max`;
  return over > 0 ? `${formatMoney(over)} over our max` : 'one increment over our max';
}
