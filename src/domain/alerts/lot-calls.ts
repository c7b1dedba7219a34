import { attempt } from '../attempt.ts';
import type { RushCalendar } from '../rush/rush-bands.ts';
import type { AlertRules } from '../setup/alert-rules.ts';
import { type Instant, shifted } from '../time/instant.ts';
import { MINUTE } from '../time/units.ts';
import { type AlertBid, type AlertLot, calledAt, closesBy, nextClose, readingsOf } from './alert-lot.ts';

/** One step of a lot's ladder. */
export interface LotCall {
  readonly lot: AlertLot;
  /** The close that it is about: of a doubtful one, one of its readings. */
  readonly close: Instant;
  /** Says lot, step and close, so that nothing is said twice, and a close that moves is called anew. */
  readonly key: string;
  /**
   * `before` the close, `again` after it was put off, `after` the close to ask how it ended; `news` when something came up
   * about our bid.
   */
  readonly step: 'before' | 'again' | 'after' | 'news';
  /** Milliseconds since 1970. */
  readonly dueAt: number;
  /** The last one before that close: who wants to act must act now. */
  readonly last: boolean;
}

type LadderRules = Pick<AlertRules, 'leadMinutes' | 'placedLeadMinutes' | 'afterCloseMinutes'>;

/** However long a call is put off, it comes back at least this long before the close. */
const LAST_MOMENT = MINUTE;
/** Two minutes to reach the sale, two to bid and one to spare: put off before that, it comes back with as much. */
const LAST_USEFUL = 5 * MINUTE;

/**
 * Every call for a lot in the order in which they are due; none once it has a result or its user said that he is done.
 * With a bid in that stands, or in another's hands, it needs fewer. How it ended is asked when the busy hours are over.
 */
export function callsOfLot(lot: AlertLot, rules: LadderRules, calendar: Pick<RushCalendar, 'of'>): LotCall[] {
  // One that came in after its close is history: there was never anything to call for.
  if (isOver(lot)) return [];
  const close = closesBy(lot);
  const calls = afterPutOff(lot, beforeClose(lot, leadsOf(lot, rules)));
  if (rules.afterCloseMinutes !== null)
    calls.push({
      lot,
      close,
      key: afterKey(lot),
      step: 'after',
      dueAt: calmAfter(shifted(close, rules.afterCloseMinutes * MINUTE), calendar),
      last: false,
    });
  return calls;
}

/** The moment itself, or the end of the busy hours that it falls in. A close on no day of any calendar is asked about at once. */
function calmAfter(moment: Instant, calendar: Pick<RushCalendar, 'of'>): number {
  const standing = attempt(() => calendar.of(moment));
  return standing.ok && standing.value.kind === 'in' ? standing.value.band.to : moment;
}

/** Nothing is to be called for: it has a result, its user is done with it, or it came in after its close. */
const isOver = (lot: AlertLot): boolean => lot.ended || lot.done === true || lot.since >= closesBy(lot);

/** The key of the question afterwards. */
export const afterKey = (lot: Pick<AlertLot, 'id' | 'close' | 'otherCloses' | 'moved'>): string =>
  `${lot.id} after ${nameOf(closesBy(lot), lot)}`;

/** A close as a key names it. */
const nameOf = (close: Instant, lot: Pick<AlertLot, 'close' | 'moved'>): Instant =>
  close === lot.close ? calledAt(lot) : close;

/** The minutes before the close at which a lot is called, the earliest call first. */
export function leadsOf(
  lot: Pick<AlertLot, 'ownLeads' | 'handedTo'> & { readonly bid: Pick<AlertBid, 'loud'> },
  rules: Pick<AlertRules, 'leadMinutes' | 'placedLeadMinutes'>,
): readonly number[] {
  if (lot.ownLeads !== undefined) return lot.ownLeads;
  if (!lot.bid.loud) return rules.placedLeadMinutes;
  // Who has it has it; but a bid that nobody makes is nobody's.
  return lot.handedTo === undefined ? rules.leadMinutes : rules.leadMinutes.slice(-1);
}

/**
 * A moment before which no call of an open lot can come, whatever its bid turns out to be: so that the bids of lots which
 * close in days need not be worked out at every look. `Infinity` when none can.
 */
export function earliestCall(lot: AlertLot, rules: LadderRules): number {
  if (isOver(lot)) return Number.POSITIVE_INFINITY;
  if (lot.extendedAt !== undefined || lot.putOffUntil !== undefined) return Number.NEGATIVE_INFINITY;
  const leads = lot.ownLeads ?? [...rules.leadMinutes, ...rules.placedLeadMinutes];
  if (leads.length > 0) return (readingsOf(lot)[0] ?? lot.close) - Math.max(...leads) * MINUTE;
  return rules.afterCloseMinutes === null
    ? Number.POSITIVE_INFINITY
    : shifted(closesBy(lot), rules.afterCloseMinutes * MINUTE);
}

/** What came up about the bid on an open lot or its price, as a call; null when there is nothing that was not said. */
export function newsOf(lot: AlertLot, shownKeys: { has(key: string): boolean }, now: number): LotCall | null {
  if (lot.ended || !(lot.bid.placed || isNear(lot, now))) return null;
  const { news } = lot.bid;
  if (news === null || shownKeys.has(news.key) || (news.calm === true && (!isNear(lot, now) || lot.done))) return null;
  return {
    lot,
    close: nextClose(lot, now),
    key: news.key,
    step: 'news',
    dueAt: news.since,
    last: news.urgent === true,
  };
}

/** Minutes before the new close: the first of them that is still ahead. */
const AFTER_EXTENSION = [3, 2, 1] as const;

/** Until then nobody has to know that nothing is to be done. */
const NEAR = 12 * 60 * MINUTE;
const isNear = (lot: AlertLot, now: number): boolean => nextClose(lot, now) - now <= NEAR;

function beforeClose(lot: AlertLot, leads: readonly number[]): LotCall[] {
  const call = (lead: number, close: Instant): LotCall => ({
    lot,
    close,
    key: `${lot.id} ${lead} ${nameOf(close, lot)}`,
    step: 'before',
    dueAt: close - lead * MINUTE,
    last: lead === (leads.at(-1) ?? lead),
  });
  // Readings of one close can lie nearer to each other than the first call of the one and the last of the other.
  const calls = readingsOf(lot)
    .filter((close) => close > lot.since)
    .flatMap((close) => leads.map((lead) => call(lead, close)))
    .sort((a, b) => a.dueAt - b.dueAt);
  const { extendedAt } = lot;
  if (extendedAt === undefined) return calls;
  // Who told of the extension was there: only what is still ahead is worth a call, and at least one is.
  const ahead = calls.filter(({ dueAt }) => dueAt > extendedAt);
  if (ahead.length > 0 || leads.length === 0) return ahead;
  const lead = AFTER_EXTENSION.find((minutes) => lot.close - minutes * MINUTE > extendedAt) ?? 1;
  return [{ ...call(lead, lot.close), last: true }];
}

/** While it is put off nothing is said; then once, and from there on as planned. */
function afterPutOff(lot: AlertLot, calls: readonly LotCall[]): LotCall[] {
  if (lot.putOffUntil === undefined) return [...calls];
  const until = Math.min(lot.putOffUntil, closesBy(lot) - LAST_MOMENT);
  const close = nextClose(lot, until);
  // What came after the put-off settles it: the bid that it asked for, or time that was added.
  if (!lot.bid.loud && (lot.bid.at ?? 0) >= Math.min(until, lot.putOffAt ?? until)) return [...calls];
  if ((lot.extendedAt ?? 0) >= until) return [...calls];
  // A reading that had passed by then was called before it was put off, or is called late: it is none of what was put off.
  const [before, later] = [calls.filter((call) => call.close <= until), calls.filter(({ dueAt }) => dueAt >= until)];
  if (later[0]?.dueAt === until) return [...before, ...later];
  // Where the last call would follow soon, this is it: what was put off comes back once.
  const next = later.find((call) => call.close === close);
  const last = next === undefined || (next.last && next.dueAt - until <= close - next.dueAt);
  if (last && next !== undefined)
    return [...before, { ...next, step: 'again', dueAt: until }, ...later.filter((call) => call !== next)];
  return [...before, { lot, close, key: `${lot.id} again ${until}`, step: 'again', dueAt: until, last }, ...later];
}

/**
 * Until when a call can be put off: never past the next call that was planned as the last one, or, when that has been,
 * past the last five minutes before the close, or the last one when those have begun. Null when there is no time left to put it off.
 */
export function putOffUntil(
  lot: Pick<AlertLot, 'close'>,
  leads: readonly number[],
  minutes: number,
  now: number,
): number | null {
  const last = lot.close - (leads.at(-1) ?? 0) * MINUTE;
  const useful = now < lot.close - LAST_USEFUL ? LAST_USEFUL : LAST_MOMENT;
  const latest = now < last && last < lot.close ? last : lot.close - useful;
  const until = Math.min(now + minutes * MINUTE, latest);
  return until > now ? until : null;
}
