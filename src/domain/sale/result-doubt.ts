import type { LotFacts } from '../lot/lot.ts';
import type { Cents } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import type { Result } from './result.ts';
import { amountOf } from './result-words.ts';

/** An amount this many times the figures beside it, or this small a part of them, is more likely a slip than a price. */
const FAR = 4;

/** Whether an amount is far above everything that is known beside it; not where nothing is. */
export function farAbove(amount: Cents, beside: readonly (Cents | undefined)[]): boolean {
  const known = figures(beside);
  return known.length > 0 && amount > Math.max(...known) * FAR;
}

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
  const known = figures([priceNow, proxy, maxBid ?? undefined]);
  if (amount === undefined || known.length === 0) return null;
  const [low, high] = [Math.min(...known) as Cents, Math.max(...known) as Cents];
  if (farAbove(amount, known))
    return `${formatMoney(amount)} is far above every figure for this lot (${formatMoney(high)} at most).`;
  if (amount * FAR < low)
    return `${formatMoney(amount)} is far below every figure for this lot (${formatMoney(low)} at least).`;
  return null;
}

const figures = (beside: readonly (Cents | undefined)[]): Cents[] =>
  beside.filter((figure): figure is Cents => figure !== undefined && figure > 0);
