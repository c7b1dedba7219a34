import { sayClock, sayTime } from '../time/say-time.ts';
import type { Zone } from '../time/zone.ts';
import type { Alert } from './alert.ts';
import { type AlertLot, nextClose, wantsAct } from './alert-lot.ts';
import { atMost, lateWords, roughly } from './say-late.ts';
import { addressed, clockOf, type DueCall, movedWords, rankOf, type Saying, sayOne, todoWords } from './say-lots.ts';

/** As many as a notice has room for; each comes with its number. */
const NAMED = 8;

/** What somebody has to act on now: one lot with its buttons, or one list of those that follow close upon each other. */
export function sayPressing(calls: readonly DueCall[], others: number, saying: Saying): Alert {
  const { zone, now } = saying;
  const soonest = inOrder(calls);
  const [first, last] = ends(soonest);
  if (soonest.length === 1) return sayOne(first, others, saying);
  const late = lateWords(Math.min(...soonest.map(({ dueAt, lot }) => Math.max(dueAt, lot.since))), now);
  const when = first.close > now ? `, the first in ${roughly(first.close - now)}` : '';
  return {
    ...several(soonest, now),
    about: `together-${last.lot.id}`,
    title: `${addressed(saying.onDuty)}${late}${count(soonest, 'lot needs a bid', 'lots need a bid')}${when}: they close ${span(first, last, zone)}`,
    body: atMost(NAMED, soonest, (call) => lineOf(call, saying)).join('\n'),
    loudness: 'loud',
    route: `#/now/${first.lot.id}`,
  };
}

/**
 * What needs somebody in the next half hour, softly, and what came up that needs nobody; in the place of the last one.
 * @param beside lots that were named before and still wait
 */
export function saySoon(calls: readonly DueCall[], beside: readonly AlertLot[], saying: Saying): Alert {
  const { zone, now } = saying;
  const [first, last] = ends(inOrder(calls));
  if (calls.length === 1 && beside.length === 0) return sayOne(first, 0, saying);
  const waiting = beside.map((lot) => ({ lot, close: nextClose(lot, now) }));
  const wanting = [...calls.filter(({ lot }) => wantsAct(lot)), ...waiting].toSorted((a, b) => a.close - b.close);
  const rest = calls.filter(({ lot }) => !wantsAct(lot));
  const until = wanting.at(-1);
  const dues = calls.flatMap(({ step, dueAt, lot }) => (step === 'news' ? [] : [Math.max(dueAt, lot.since)]));
  const late = lateWords(Math.min(now, ...dues), now);
  return {
    ...several(calls, now),
    about: `soons-${last.lot.id}`,
    title:
      until === undefined
        ? `${addressed(saying.onDuty)}${late}${count(rest, 'lot closes', 'lots close')} with nothing to do`
        : `${addressed(saying.onDuty)}${late}${count(wanting, 'lot needs', 'lots need')} a bid by ${sayClock(until.close, zone)}`,
    body: [
      ...atMost(NAMED, wanting, (call) => lineOf(call, saying)),
      ...atMost(NAMED, rest, ({ lot, close, step }) =>
        step === 'news' && lot.bid.news !== null
          ? `${sayClock(close, zone)} ${lot.name}: ${lot.bid.news.title}`
          : `${sayClock(close, zone)} ${lot.name}. ${todoWords(lot)}`,
      ),
    ].join('\n'),
    loudness: 'quiet',
    route: wanting[0] === undefined ? '#/now' : `#/now/${wanting[0].lot.id}`,
  };
}

/** Lots that have closed: either all of them unsaid, or all of them to be asked about. No button would fit them all. */
export function sayClosed(calls: readonly DueCall[], saying: Saying): Alert {
  const { zone, now } = saying;
  const latest = inOrder(calls).toReversed();
  const [last, first] = ends(latest);
  if (latest.length === 1) return sayOne(first, 0, saying);
  const missed = !last.told;
  const late = lateWords(Math.min(...latest.map(({ dueAt, lot }) => Math.max(dueAt, lot.since))), now);
  return {
    ...several(latest, now),
    about: missed ? 'missed' : 'ended',
    title: missed
      ? `${late}${count(latest, 'lot', 'lots')} closed without a reminder in time`
      : `${late}${count(latest, 'lot', 'lots')} closed ${span(first, last, zone)}: how did they end?`,
    body: atMost(NAMED, latest, ({ lot, close }) => `${sayTime(close, zone)} ${lot.name}. ${lot.stop}`).join('\n'),
    loudness: missed && latest.some(({ lot }) => wantsAct(lot)) ? 'loud' : 'quiet',
    route: '#/now',
  };
}

const lineOf = (call: Pick<DueCall, 'lot' | 'close'>, saying: Saying): string =>
  [
    `${clockOf(call, saying.zone)} ${call.lot.name}. ${call.lot.stop} ${todoWords(call.lot)}`,
    movedWords(call.lot, saying),
  ]
    .filter(Boolean)
    .join(' ');

function several(calls: readonly DueCall[], now: number): Pick<Alert, 'keys' | 'rank' | 'offers'> {
  const ranks = calls.map((call) => rankOf(call, now)).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return {
    keys: calls.flatMap(({ key, passed }) => [key, ...passed]),
    rank: ranks[0] ?? rankOf(ends(calls)[0], now),
    offers: [],
  };
}

/** "at 12:05 PM", "from 12:05 PM to 12:08 PM". */
function span(first: DueCall, last: DueCall, zone: Zone): string {
  const [from, to] = [sayClock(first.close, zone), sayClock(last.close, zone)];
  return from === to ? `at ${from}` : `from ${from} to ${to}`;
}

function ends(calls: readonly DueCall[]): readonly [DueCall, DueCall] {
  const [first, last] = [calls[0], calls.at(-1)];
  if (first === undefined || last === undefined) throw new Error('nothing is due');
  return [first, last];
}

const count = (some: readonly unknown[], one: string, many: string) =>
  `${some.length.toLocaleString('en-US')} ${some.length === 1 ? one : many}`;
const inOrder = (calls: readonly DueCall[]) => calls.toSorted((a, b) => a.close - b.close);
