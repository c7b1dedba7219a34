import { tellApart } from '../close/say-close.ts';
import { sayClock, sayTime } from '../time/say-time.ts';
import type { Zone } from '../time/zone.ts';
import type { Alert } from './alert.ts';
import { type AlertLot, type BidNews, closesBy, needsBid, readingsOf } from './alert-lot.ts';
import type { LotCall } from './lot-calls.ts';
import { offersFor } from './offers-for.ts';
import { atMost, lateWords, roughly } from './say-late.ts';

/** A call that is due, and what goes with it. */
export interface DueCall extends LotCall {
  /** Earlier calls of the same lot that this one makes needless. */
  readonly passed: readonly string[];
  /** Whether an earlier call of this lot was said in its time. */
  readonly told: boolean;
}

export interface Saying {
  readonly zone: Zone;
  readonly now: number;
  /** To whom lots were handed over before, the last one first; offered on the notice. */
  readonly people: readonly string[];
}

/** As many as can be read at a glance. */
const NAMED = 6;
const NEEDS = { open: 0, openSoft: 2, untold: 3, ended: 5 } as const;

/** One lot's call. @param others how many more lots close so near to it that nobody can watch them one by one */
export function sayOne(call: DueCall, others: number, saying: Saying): Alert {
  const { lot } = call;
  const { now } = saying;
  const open = isOpen(call, now);
  const news = call.step === 'news' ? lot.bid.news : null;
  // Since when it is so is mostly not known to the minute, so it is never called late.
  const late = news === null ? lateWords(Math.max(call.dueAt, lot.since), now) : '';
  const untold = !open && !call.told;
  if (news !== null) return sayNews(call, news, saying);
  const title = open
    ? `${late}${lot.name} ${closingWords(call, now)}`
    : `${late}${lot.name} closed ${roughly(now - call.close)} ago${call.step === 'after' ? ': how did it end?' : ''}`;
  return {
    about: `lot-${lot.id}`,
    keys: [call.key, ...call.passed],
    title,
    body: (open
      ? [lot.stop, closeSentence(lot, saying.zone), todoWords(lot), others > 0 && withOthers(others)]
      : [untold && 'You got no reminder in time.', lot.stop, lot.bid.placed && 'A bid was in.', 'Enter how it ended.']
    )
      .filter(Boolean)
      .join(' '),
    loudness: needsBid(lot) && (open || untold) ? 'loud' : 'quiet',
    route: `#/now/${lot.id}`,
    offers: offersFor(lot, open, saying),
    rank: rankOf(call, now),
  };
}

/** What came up about our bid, said at once and aloud: also of a lot whose calls the user is done with. */
function sayNews(call: DueCall, news: BidNews, { zone, now }: Saying): Alert {
  const { lot } = call;
  return {
    about: `lot-${lot.id}`,
    keys: [call.key, ...call.passed],
    title: `${lot.name}: ${news.title}`,
    body: [news.body, lot.stop, closeSentence(lot, zone)].join(' '),
    loudness: 'loud',
    route: `#/now/${lot.id}`,
    offers: lot.bid.offer === null ? [] : [lot.bid.offer],
    rank: rankOf(call, now),
  };
}

/** The call of a lot that can't be put into words: it is due, and somebody has to look. */
export function sayBare({ key, passed, lot, close }: DueCall, why: string): Alert {
  return {
    about: `lot-${lot.id}`,
    keys: [key, ...passed],
    title: 'A reminder for a lot is due',
    body: why,
    loudness: 'loud',
    route: `#/lot/${lot.id}`,
    offers: [],
    rank: [NEEDS.open, close],
  };
}

/** Lots that close too near to each other to be watched one by one: one call that names them all. */
export function sayTogether(calls: readonly DueCall[], saying: Saying): Alert {
  const { zone, now } = saying;
  const soonest = inOrder(calls);
  const [first, last] = [soonest[0], soonest.at(-1)];
  if (first === undefined || last === undefined) throw new Error('nothing closes together');
  const span =
    sayClock(first.close, zone) === sayClock(last.close, zone)
      ? `at ${sayClock(first.close, zone)}`
      : `from ${sayClock(first.close, zone)} to ${sayClock(last.close, zone)}`;
  const late = lateWords(Math.min(...soonest.map(({ dueAt, lot }) => Math.max(dueAt, lot.since))), now);
  if (!isOpen(first, now))
    return {
      ...several(soonest, now),
      about: `together-${first.lot.id}`,
      title: `${late}${soonest.length} lots closed ${span}: how did they end?`,
      body: atMost(NAMED, soonest, (call) => `${clockOf(call, zone)} ${call.lot.name}. ${call.lot.stop}`).join('\n'),
      route: '#/now',
    };
  return {
    ...several(soonest, now),
    about: `together-${first.lot.id}`,
    title: `${late}${soonest.length} lots close ${span}, in ${roughly(first.close - now)}`,
    body: atMost(
      NAMED,
      soonest,
      (call) => `${clockOf(call, zone)} ${call.lot.name}. ${call.lot.stop} ${todoWords(call.lot)}`,
    ).join('\n'),
    route: `#/now/${first.lot.id}`,
  };
}

/** So many at once that naming each would be a flood which nobody reads: one notice that counts them. */
export function sayMany(calls: readonly DueCall[], { zone, now }: Saying): Alert {
  const soonest = inOrder(calls);
  const open = soonest.filter((call) => isOpen(call, now));
  const closed = soonest.filter((call) => !isOpen(call, now)).reverse();
  const untold = closed.filter(({ told }) => !told).length;
  const asked = closed.length - untold;
  const wanting = open.filter(({ lot }) => needsBid(lot));
  const what = wanting.some(({ lot }) => lot.bid.placed) ? 'to act on' : 'without a proxy';
  const title = [
    open.length > 0 && `${count(open.length, 'lot closes', 'lots close')} soon, ${wanting.length} ${what}`,
    untold > 0 && `${count(untold, 'lot', 'lots')} closed without a reminder in time`,
    asked > 0 && `${count(asked, 'lot', 'lots')} closed: how did they end?`,
  ]
    .filter(Boolean)
    .join('; ');
  return {
    ...several(soonest, now),
    about: 'closings',
    title,
    body: atMost(NAMED, [...open, ...closed], ({ lot, close }) => `${sayTime(close, zone)} ${lot.name}`).join('\n'),
    route: '#/now',
  };
}

function several(calls: readonly DueCall[], now: number): Pick<Alert, 'keys' | 'loudness' | 'rank' | 'offers'> {
  const needed = calls.some((call) => needsBid(call.lot) && (isOpen(call, now) || !call.told));
  const ranks = calls.map((call) => rankOf(call, now)).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return {
    keys: calls.flatMap(({ key, passed }) => [key, ...passed]),
    loudness: needed ? 'loud' : 'quiet',
    rank: ranks[0] ?? [NEEDS.ended, 0],
    offers: [],
  };
}

function rankOf(call: DueCall, now: number): Alert['rank'] {
  const { lot, close, told, step } = call;
  if (isOpen(call, now)) return [step === 'news' || needsBid(lot) ? NEEDS.open : NEEDS.openSoft, close];
  return [told ? NEEDS.ended : NEEDS.untold, -close];
}

/** Whether its lot can still be open: a doubtful close may have passed in one of its readings. */
const isOpen = ({ lot }: DueCall, now: number): boolean => closesBy(lot) > now;

const inDoubt = (lot: AlertLot): boolean => readingsOf(lot).length > 1;

/** "closes in 5 min"; of a doubtful close what may be, and never as a fact. */
function closingWords({ lot, close }: DueCall, now: number): string {
  if (close <= now) return `may have closed ${roughly(now - close)} ago`;
  return `${inDoubt(lot) ? 'may close' : 'closes'} in ${roughly(close - now)}`;
}

function closeSentence(lot: AlertLot, zone: Zone): string {
  if (!inDoubt(lot)) return `Closes ${sayTime(lot.close, zone)}.`;
  return `Its close is in doubt: ${tellApart(readingsOf(lot), zone).join(' or ')}. Choose the right one.`;
}

const clockOf = ({ lot, close }: DueCall, zone: Zone): string => `${sayClock(close, zone)}${inDoubt(lot) ? '?' : ''}`;

function todoWords(lot: AlertLot): string {
  if (lot.handedTo !== undefined) return `${lot.handedTo} has it. ${lot.bid.words}`;
  return lot.bid.words;
}

const withOthers = (others: number) => `${count(others, 'other closes', 'others close')} within minutes of it.`;
const count = (n: number, one: string, many: string) => `${n.toLocaleString('en-US')} ${n === 1 ? one : many}`;
const inOrder = (calls: readonly DueCall[]) => calls.toSorted((a, b) => a.close - b.close);
