import type { LostBecause, LostLot } from '../../domain/learn/money/lost-lot.ts';
import type { Miss } from '../../domain/learn/money/misses.ts';
import type { WalkPart } from '../../domain/learn/money/profit-walk.ts';
import type { PriceTrend } from '../../domain/learn/scores/price-trend.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { countWords } from '../words/count-words.ts';
import type { TermId } from '../words/glossary.ts';

/** What each step from expected to actual profit is called. */
export const PART_WORDS: Readonly<Record<WalkPart, string>> = {
  retail: 'Retail',
  recon: 'Recon',
  fees: 'Buy fees and charges',
  transport: 'Transport',
  days: 'Days on the lot',
  other: 'Other bills',
  canceled: 'Canceled sale',
};

/** The entry of the Words page that its name leads to. */
export const PART_TERMS: Readonly<Partial<Record<WalkPart, TermId>>> = {
  retail: 'retail',
  recon: 'recon',
  fees: 'buy-fee',
  transport: 'transport',
  days: 'days-to-sell',
  canceled: 'canceled-sale',
};

export const LOST_WORDS: Readonly<Record<LostBecause, string>> = {
  execution: 'Missed: our max bid would have won',
  rationing: 'Held back by the plan',
  rule: 'Above our max bid, still worth it without the profit rule',
  rightly: 'Rightly lost: nothing to earn at that price',
};

const WHOLE = { cents: 'never' } as const;
const dollars = (amount: Cents): string => formatMoney(amount, WHOLE);
const size = (amount: number): string => dollars(cents(Math.abs(amount)));

/** A miss in one sentence. */
export function missInWords(miss: Miss): string {
  switch (miss.kind) {
    case 'retail': {
      const under = miss.actual < miss.low;
      const by = size(under ? miss.low - miss.actual : miss.actual - miss.high);
      return `Sold for ${dollars(miss.actual)}, ${by} ${under ? 'below' : 'above'} the range of ${dollars(miss.low)} to ${dollars(miss.high)}.`;
    }
    case 'recon':
      return `Recon came to ${dollars(miss.actual)}; ${dollars(miss.expected)} was expected.`;
    case 'fees':
      return `Fees were billed at ${formatMoney(miss.actual)}; the schedule says ${formatMoney(miss.expected)}. Dispute the bill or correct the schedule.`;
    case 'days': {
      const half = `half of such cars were to sell within ${Math.round(miss.median)}`;
      return `${miss.sold ? 'Sold after' : 'Still here after'} ${countWords(miss.days, 'day', 'days')}; ${half}.`;
    }
    case 'canceled':
      return miss.lost === null || miss.lost <= 0
        ? 'The sale was canceled; nothing was lost on it so far.'
        : `The sale was canceled, and ${dollars(miss.lost)} does not come back.`;
    case 'lost':
      return lostInWords(miss.why);
  }
}

/** Why a lot within our max bid was lost. */
function lostInWords({ needed, profit, bid, mayBePlanned }: LostLot): string {
  const worth = profit > 0 ? ` and would have earned about ${dollars(profit)} at most` : '';
  const start = `${dollars(needed)} would have won it, which was within our max bid${worth}.`;
  const plan = mayBePlanned ? ' The plan may have held it back.' : '';
  if (bid === 'none') return `${start} No bid was recorded.${plan}`;
  if (bid === 'not-counted') return `${start} Our bid was high enough. Check whether it went in.`;
  return `${start} Our bid was lower.${plan}`;
}

/** Prices that moved, in a sentence that says what to do. */
export function trendInWords({ direction, change, cases }: PriceTrend): string {
  const by = `${Math.abs(Math.round(change * 100))}%`;
  return direction === 'falling'
    ? `Sale prices have fallen for four weeks, by about ${by} against your retail estimates (${cases} lots). Estimates from before may be too high: check your comparables.`
    : `Sale prices have risen for four weeks, by about ${by} against your retail estimates (${cases} lots). Estimates from before may be too low: check your comparables.`;
}

/** "3 more sold cars". */
export const moreWords = (missing: number, one: string, many: string): string =>
  `${missing} more ${missing === 1 ? one : many}`;

/** A share as whole percent. */
export const percent = (share: number): string => `${Math.round(share * 100)}%`;

/** A factor as what it adds or takes: 0.94 is "6% less". */
export function moreOrLess(factor: number): string {
  const by = Math.round(Math.abs(factor - 1) * 1000) / 10;
  return by === 0 ? 'the same' : `${by}% ${factor < 1 ? 'less' : 'more'}`;
}
