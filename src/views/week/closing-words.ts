import type { BidState } from '../../domain/bid/bid-state.ts';
import { bidWords } from '../../domain/bid/bid-words.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { Ending } from '../../domain/sale/result.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { sayClock, sayDate, sayTime } from '../../domain/time/say-time.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { NEEDS, type Need, wantsAct } from '../../domain/week/closing-need.ts';
import type { Standing } from '../lots/standing.ts';
import { stopWords } from '../lots/stop-words.ts';
import type { Closing } from './closing.ts';

/** How a lot ended, short. */
export const ENDING_WORDS: Record<Ending, string> = {
  won: 'won',
  lost: 'lost',
  'not-sold': 'not sold',
  pending: 'pending seller approval',
  withdrawn: 'withdrawn',
  'not-watched': 'unknown, nobody watched',
};

/** What is still to be done about a closing, or that nothing is. */
export function needWords(closing: Closing): string {
  const { need, rush, bid } = closing;
  const words = lower(bidWords(bid));
  switch (need) {
    case 'danger':
      return `${words}, in busy hours`;
    case 'unsaid':
      return 'closed, enter how it ended';
    case 'over':
      return endWords(bid) ?? words;
    default:
      return `${words}${wantsAct(need) && rush.kind === 'near' ? ', near busy hours' : ''}${holderWords(closing)}`;
  }
}

/** Short, where a row has no room for the price; a canceled sale says so. */
function endWords(bid: BidState): string | null {
  if (bid.is !== 'ended' || bid.result === undefined || bid.otherResult !== undefined) return null;
  return bid.canceled ? 'sale canceled' : ENDING_WORDS[bid.result.result.ended];
}

const lower = (words: string) => words.charAt(0).toLowerCase() + words.slice(1);

/** Who has it, where that is not the user of this browser; that he is done with it. */
function holderWords({ lot: { clock }, close }: Closing): string {
  if (clock?.handedTo !== undefined) return `, ${clock.handedTo.to} has it`;
  return clock?.doneFor === close ? ', no more reminders' : '';
}

/** Everything about one closing in a sentence: when, which car, where to stop, what is still to be done, and the calls ahead. */
export function closingWords(
  closing: Closing,
  standing: Standing | undefined,
  calls: readonly Instant[],
  zone: Zone,
): string {
  const { lot, close } = closing;
  return [
    `${sayDate(dateIn(zone, close))}, ${sayClock(close, zone)}`,
    lotTitle(lot.facts),
    standing === undefined ? 'max bid being worked out' : stopWords(standing),
    needWords(closing),
    calls.length > 0 && `reminders ${calls.map((at) => sayCall(at, close, zone)).join(', ')}`,
  ]
    .filter(Boolean)
    .join(' · ');
}

/** The time, with its day if that differs from the day of the close. */
const sayCall = (at: Instant, close: Instant, zone: Zone) =>
  dateIn(zone, at) === dateIn(zone, close) ? sayClock(at, zone) : sayTime(at, zone);

/** A pile of closings in a sentence. */
export function crowdWords(closings: readonly Closing[], zone: Zone): string {
  const [first, last] = [closings[0], closings.at(-1)];
  if (first === undefined || last === undefined) return '';
  const times = [sayClock(first.close, zone), sayClock(last.close, zone)];
  const when = times[0] === times[1] ? `at ${times[0]}` : `from ${times[0]} to ${times[1]}`;
  return [
    sayDate(dateIn(zone, first.close)),
    `${closings.length.toLocaleString('en-US')} close ${when}`,
    ...countsOf(closings).map(({ words }) => words),
    'opens the day',
  ].join(' · ');
}

/** How many of them need what, the greatest need first: "3 to act on in busy hours". */
export function countsOf(closings: readonly Closing[]): readonly { readonly need: Need; readonly words: string }[] {
  const counts = new Map<Need, number>();
  for (const { need } of closings) counts.set(need, (counts.get(need) ?? 0) + 1);
  return NEEDS.flatMap((need) => {
    const count = counts.get(need);
    return count === undefined ? [] : [{ need, words: `${count.toLocaleString('en-US')} ${COUNT_WORDS[need]}` }];
  });
}

const COUNT_WORDS: Record<Need, string> = {
  danger: 'to act on in busy hours',
  unsaid: 'without a result',
  outbid: 'outbid',
  'over-max': 'bid over max',
  bare: 'no proxy yet',
  check: 'to check',
  'past-stop': 'price over max',
  placed: 'placed',
  over: 'over',
};
