import type { LotFacts } from '../lot/lot.ts';
import type { Cents } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import type { Result } from './result.ts';
import { amountOf } from './result-words.ts';

/** An amount this many times the figures beside it, or this small a part of them, is more likely a slip than a price. */
const FAR = 4;

/**
 * Why an amount is worth a second look before it is kept, or null. A zero too many turns a 12,500 car into a 125,000 one;
 * a price just typed is held against what the lot last stood at, its proxy and its max bid.
 */
export function resultDoubt(
  result: Result,
  { priceNow, proxy }: Pick<LotFacts, 'priceNow' | 'proxy'>,
  maxBid: Cents | null,
): string | null {
  const amount = amountOf(result);
  if (amount === undefined) return null;
  const known = [priceNow, proxy, maxBid ?? undefined].filter(
    (figure): figure is Cents => figure !== undefined && figure > 0,
  );
  if (known.length === 0) return null;
  const low = Math.min(...known);
  const high = Math.max(...known);
  if (amount > high * FAR)
    return `${formatMoney(amount)} is far above every figure for this lot (${formatMoney(high as Cents)} at most).`;
  if (amount * FAR < low)
    return `${formatMoney(amount)} is far below every figure for this lot (${formatMoney(low as Cents)} at least).`;
  if (result.ended === 'won' && priceNow !== undefined && amount < priceNow)
    return `The price was already ${formatMoney(priceNow)}, so it can’t have sold for ${formatMoney(amount)}.`;
  return null;
}
