import type { Instant } from '../time/instant.ts';
import { sayClock, sayTime } from '../time/say-time.ts';
import { DAY } from '../time/units.ts';
import type { Alert } from './alert.ts';
import { type AlertLot, closesBy } from './alert-lot.ts';
import { atMost, lateWords } from './say-late.ts';
import type { Saying } from './say-lots.ts';

const NAMED = 8;
/** After what wants somebody, before what is asked about. */
const RANK = 4;

export const awayKey = (since: Instant): string => `away ${since}`;

/** "Late by 50 min: Headroom was not running: 5 lots closed since 12:45 PM", once; some may have closed before it stopped. @param closed at least one */
export function sayMeanwhile(closed: readonly AlertLot[], since: Instant, { zone, now }: Saying): Alert {
  const inOrder = closed.toSorted((a, b) => closesBy(a) - closesBy(b));
  const first = Math.min(...inOrder.map(closesBy));
  const from = now - since < DAY ? sayClock(since, zone) : sayTime(since, zone);
  return {
    about: 'meanwhile',
    keys: [awayKey(since)],
    title: `${lateWords(first, now)}Headroom was not running: ${closed.length.toLocaleString('en-US')} ${closed.length === 1 ? 'lot' : 'lots'} closed since ${from}`,
    body: [
      ...atMost(NAMED, inOrder, (lot) => `${sayClock(closesBy(lot), zone)} ${lot.name}. ${lot.bid.words}`),
      'You are asked later how they ended.',
    ].join('\n'),
    loudness: 'quiet',
    route: '#/now',
    offers: [],
    rank: [RANK, now],
  };
}
