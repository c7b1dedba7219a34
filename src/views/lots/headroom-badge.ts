import { cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Standing } from './standing.ts';

/** The room left on a lot, in the four characters that a toolbar button has, and in a sentence. */
export function headroomBadge({ headroom, maxBid }: Pick<Standing, 'headroom' | 'maxBid'>): {
  readonly text: string;
  readonly title: string;
} {
  if (maxBid === null) return { text: '✓', title: 'Headroom: this lot is on your list' };
  if (headroom === null) return { text: '✓', title: `Headroom: stop at ${formatMoney(maxBid)}` };
  const title =
    headroom < 0
      ? `Headroom: the price is ${formatMoney(cents(-headroom))} over max (${formatMoney(maxBid)})`
      : `Headroom: ${formatMoney(headroom)} left to your max bid of ${formatMoney(maxBid)}`;
  return { text: `${headroom < 0 ? '−' : '+'}${short(Math.abs(headroom))}`, title };
}

/** Whole dollars below a thousand, else thousands, rounded toward nothing so that no room is shown that is not there. */
function short(amount: number): string {
  const dollars = Math.floor(amount / 100);
  if (dollars < 1000) return String(dollars);
  const thousands = Math.floor(dollars / 100) / 10;
  return thousands < 10 ? `${thousands}k` : `${Math.floor(thousands)}k`;
}
