import type { Cents } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import type { BidAction } from './bid-action.ts';
import type { Ending, Result } from './result.ts';

/** What each ending is called, everywhere. */
export const ENDING_WORDS: Readonly<Record<Ending, string>> = {
  won: 'Won',
  lost: 'Lost',
  'not-sold': 'Not sold',
  pending: 'Pending',
  withdrawn: 'Withdrawn',
  'not-watched': 'Unknown, nobody watched',
};

/** The amount that a result states: the hammer price, or the bid at which it stopped. */
export function amountOf(result: Result): Cents | undefined {
  switch (result.ended) {
    case 'won':
    case 'lost':
      return result.hammerCents;
    case 'not-sold':
      return result.highCents;
    case 'pending':
      return result.bidCents;
    default:
      return undefined;
  }
}

/** "Won at $12,500", "Lost, price unknown", "Not sold, high bid $9,000", "Pending at $9,000". */
export function sayResult(result: Result): string {
  const amount = amountOf(result);
  const money = amount === undefined ? null : formatMoney(amount);
  switch (result.ended) {
    case 'won':
      return `Won at ${money}`;
    case 'lost':
      return money === null ? 'Lost, price unknown' : `Lost at ${money}`;
    case 'not-sold':
      return money === null ? 'Not sold' : `Not sold, high bid ${money}`;
    case 'pending':
      return money === null ? 'Pending seller approval' : `Pending seller approval at ${money}`;
    default:
      return ENDING_WORDS[result.ended];
  }
}

/** The same of a win whose sale was canceled since: "Sale canceled, was won at $12,500". */
export function sayEnd(result: Result, canceled: boolean): string {
  const words = sayResult(result);
  return canceled ? `Sale canceled, was ${words.charAt(0).toLowerCase()}${words.slice(1)}` : words;
}

/** What each bid action is called. */
export const ACTION_WORDS: Readonly<Record<BidAction['action'], string>> = {
  'proxy-placed': 'Proxy placed',
  'proxy-raised': 'Proxy raised',
  'proxy-cut': 'Proxy lowered',
  'proxy-withdrawn': 'Proxy withdrawn',
  'live-bid': 'Live bid',
  'confirmation-seen': 'Confirmation seen',
  'result-seen': 'Result seen',
};

/** "Proxy raised to $12,500", "Live bid $9,000". */
export function sayAction({ action, cents }: BidAction): string {
  const words = ACTION_WORDS[action];
  if (cents === undefined) return words;
  const between = action === 'proxy-raised' || action === 'proxy-cut' ? ' to' : action === 'proxy-placed' ? ' at' : '';
  return `${words}${between} ${formatMoney(cents)}`;
}
