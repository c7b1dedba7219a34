import { tellApart } from '../close/say-close.ts';
import { formatMoney } from '../money/format-money.ts';
import { instant } from '../time/instant.ts';
import { sayClock, sayTime } from '../time/say-time.ts';
import { HOUR, MINUTE } from '../time/units.ts';
import { dateIn } from '../time/wall-clock.ts';
import type { Zone } from '../time/zone.ts';
import type { Alert } from './alert.ts';
import { type AlertLot, closesBy, readingsOf, wantsAct } from './alert-lot.ts';
import type { LotCall } from './lot-calls.ts';
import { offersFor } from './offers-for.ts';
import { lateWords, roughly } from './say-late.ts';

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
  /** Who uses this computer, where several are in a team. */
  readonly me?: string | undefined;
  /** Whose reminders these are by the plan of duty. */
  readonly onDuty?: string | undefined;
}

/** "The salesperson: ", for who has the lot, else for who is on duty. */
export const addressed = (who: string | undefined): string => (who === undefined ? '' : `${who}: `);

const NEEDS = { open: 0, openSoft: 2, untold: 3, ended: 5 } as const;

/** One lot's call. @param others how many more lots close so near to it that nobody can watch them one by one */
export function sayOne(call: DueCall, others: number, saying: Saying): Alert {
  const { lot } = call;
  const { now, zone } = saying;
  const open = isOpen(call, now);
  const news = call.step === 'news' ? lot.bid.news : null;
  const loud = open ? call.last && (wantsAct(lot) || (news !== null && lot.bid.loud)) : !call.told && wantsAct(lot);
  return {
    about: `${open ? (loud ? 'lot' : 'soon') : 'closed'}-${lot.id}`,
    keys: [call.key, ...call.passed],
    title: `${open ? addressed(lot.handedTo ?? saying.onDuty) : ''}${news === null ? plainTitle(call, now) : `${lot.name}: ${news.title}`}`,
    body: (open
      ? [
          lot.stop,
          news?.body,
          priceWords(lot, saying),
          news === null && todoWords(lot),
          lot.extendedAt !== undefined && 'The time was extended.',
          movedWords(lot, saying),
          closeSentence(lot, zone),
          lot.where !== undefined && `${lot.where}.`,
          others > 0 && withOthers(others),
        ]
      : [
          !call.told && 'You got no reminder in time.',
          lot.stop,
          lot.bid.placed && 'A bid was in.',
          'Enter how it ended.',
        ]
    )
      .filter(Boolean)
      .join(' '),
    loudness: loud ? 'loud' : 'quiet',
    route: `#/now/${lot.id}`,
    offers: offersOf(call, open, saying),
    rank: rankOf(call, now),
  };
}

/** Since when something is so is mostly not known to the minute, so news is never called late. */
function plainTitle(call: DueCall, now: number): string {
  const { lot, close, dueAt, step } = call;
  const late = lateWords(Math.max(dueAt, lot.since), now);
  if (isOpen(call, now)) return `${late}${lot.name} ${closingWords(call, now)}`;
  return `${late}${lot.name} closed ${roughly(now - close)} ago${step === 'after' ? ': how did it end?' : ''}`;
}

function offersOf({ lot, step }: DueCall, open: boolean, saying: Saying): Alert['offers'] {
  if (step !== 'news') return offersFor(lot, open, saying);
  return lot.bid.offer === null ? [] : [lot.bid.offer];
}

/** "Price $10,600 at 9:40 AM, $1,200 to go." Without the day for one of today. */
function priceWords({ bid: { price } }: AlertLot, { zone, now }: Saying): string | false {
  if (price === undefined) return false;
  const today = dateIn(zone, price.seenAt) === dateIn(zone, instant(now));
  const seen = today ? `at ${sayClock(price.seenAt, zone)}` : `on ${sayTime(price.seenAt, zone)}`;
  return `Price ${formatMoney(price.cents)} ${seen}${price.left === undefined ? '' : `, ${formatMoney(price.left)} to go`}.`;
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

/** The greatest need first: what is open and wants an act, what is open, what closed unsaid, what closed. */
export function rankOf(call: DueCall, now: number): Alert['rank'] {
  const { lot, close, told } = call;
  if (isOpen(call, now)) return [call.last && wantsAct(lot) ? NEEDS.open : NEEDS.openSoft, close];
  return [told ? NEEDS.ended : NEEDS.untold, -close];
}

/** Whether its lot can still be open: a doubtful close may have passed in one of its readings. */
export const isOpen = ({ lot }: DueCall, now: number): boolean => closesBy(lot) > now;

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

/** How long a close that moved is news. */
const MOVED_NEWS = 12 * HOUR;

/** "The close was moved earlier, from 3:00 PM." */
export function movedWords({ close, moved }: AlertLot, { zone, now }: Pick<Saying, 'zone' | 'now'>): string | false {
  if (moved === undefined || now - moved.at > MOVED_NEWS || moved.from - close < MINUTE) return false;
  const sameDay = dateIn(zone, moved.from) === dateIn(zone, close);
  return `The close was moved earlier, from ${sameDay ? sayClock(moved.from, zone) : sayTime(moved.from, zone)}.`;
}

/** When it closes; with a question mark while that is in doubt. */
export const clockOf = ({ lot, close }: Pick<DueCall, 'lot' | 'close'>, zone: Zone): string =>
  `${sayClock(close, zone)}${inDoubt(lot) ? '?' : ''}`;

export function todoWords(lot: AlertLot): string {
  if (lot.handedTo !== undefined) return `${lot.handedTo} has it. ${lot.bid.words}`;
  return lot.bid.words;
}

const withOthers = (others: number) =>
  `${others.toLocaleString('en-US')} ${others === 1 ? 'other closes' : 'others close'} within minutes of it.`;
