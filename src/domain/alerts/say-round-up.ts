import { dutyWords, namesOn } from '../rush/duty.ts';
import { addDays } from '../time/calendar-day.ts';
import { instant } from '../time/instant.ts';
import { sayClock, sayDate } from '../time/say-time.ts';
import { dateIn } from '../time/wall-clock.ts';
import type { Zone } from '../time/zone.ts';
import type { Alert } from './alert.ts';
import { type AlertLot, closesBy, needsBid, readingsOf } from './alert-lot.ts';
import type { RoundUp } from './round-ups.ts';
import { atMost, lateWords, roughly } from './say-late.ts';

const NAMED = 5;

/** "3 of tomorrow’s 5 close in your rush; 2 have no proxy yet", and what is left to do, the soonest close first. */
export function sayRoundUp(round: RoundUp, zone: Zone, now: number): Alert {
  const open = round.around.filter((lot) => closesBy(lot) > now);
  const wanting = open.filter(needsBid);
  // Lots that came in after it was due were told of as soon as could be.
  const knownSince = round.around.reduce((first, { since }) => Math.min(first, since), Number.POSITIVE_INFINITY);
  const late = lateWords(Math.max(round.dueAt, knownSince), now);
  const body = atMost(
    NAMED,
    wanting.length > 0 ? wanting : open,
    (lot) => `${clockOf(lot, round, zone)} ${lot.name}. ${lot.stop}${lot.bid.placed ? ` ${lot.bid.words}` : ''}`,
  );
  const names = namesOn(round.duty);
  return {
    about: round.key.replace(' ', '-'),
    keys: [round.key],
    title: `${names.length === 0 ? '' : `${names.join(' and ')}: `}${late}${round.kind === 'digest' ? digestTitle(round, zone, now) : rushTitle(round, open.length, now)}; ${proxyWords(wanting, open.length)}`,
    body: [...dutyLines(round, open, zone), ...body].join('\n'),
    // Before the rush each lot still gets its own last call; the evening before is the time to place bids.
    loudness: wanting.length > 0 && round.kind === 'digest' ? 'loud' : 'quiet',
    route: round.kind === 'digest' ? '#/lots' : '#/now',
    offers: [],
    rank: round.kind === 'rush' ? [1, round.band.from] : [6, round.dueAt],
  };
}

/** Who is on duty, and what closes while nobody is. */
function dutyLines(round: RoundUp, open: readonly AlertLot[], zone: Zone): string[] {
  if (round.duty.length === 0) return [];
  const gaps = round.duty.filter(({ who }) => who === undefined);
  if (gaps.length === 0 && namesOn(round.duty).length === 1) return [];
  return [
    `On duty: ${dutyWords(round.duty, zone)}.`,
    ...gaps.map((gap) => {
      const alone = open.filter((lot) => readingsOf(lot).some((close) => close >= gap.from && close < gap.to));
      const named = atMost(NAMED, alone, (lot) => `${clockOf(lot, round, zone)} ${lot.name}. ${lot.stop}`);
      const when = `Nobody is on duty from ${sayClock(gap.from, zone)} to ${sayClock(gap.to, zone)}`;
      return alone.length === 0
        ? `${when}; nothing closes then.`
        : `${when}; then ${alone.length === 1 ? 'closes' : 'close'} ${named.join(' ')}`;
    }),
  ];
}

/** When it closes that day; with a question mark while it can close at another time as well. */
function clockOf(lot: AlertLot, { date }: RoundUp, zone: Zone): string {
  const readings = readingsOf(lot);
  const close = readings.find((at) => dateIn(zone, at) === date) ?? lot.close;
  return `${sayClock(close, zone)}${readings.length > 1 ? '?' : ''}`;
}

function digestTitle({ date, ofDay, around, inside }: RoundUp, zone: Zone, now: number): string {
  const today = dateIn(zone, instant(now));
  const whose =
    date === addDays(today, 1) ? 'tomorrow’s' : date === today ? 'today’s' : `the ${sayDate(date)} closings,`;
  const near = around.length - inside;
  const all = ofDay.length;
  if (inside === 0) return `${near} of ${whose} ${all} ${near === 1 ? 'closes' : 'close'} near busy hours`;
  return `${inside} of ${whose} ${all} ${inside === 1 ? 'closes' : 'close'} in busy hours${near > 0 ? `, ${near} near them` : ''}`;
}

function rushTitle({ band, around, inside }: RoundUp, open: number, now: number): string {
  const when = band.from > now ? `begin in ${roughly(band.from - now)}` : band.to > now ? 'are on' : 'are over';
  const where = inside === around.length ? 'in them' : inside === 0 ? 'near them' : 'in or near them';
  return `Busy hours ${when}: ${open} ${open === 1 ? 'lot closes' : 'lots close'} ${where}`;
}

function proxyWords(wanting: readonly AlertLot[], open: number): string {
  if (wanting.length === 0) return 'all proxies are placed';
  const bare = wanting.filter(({ bid }) => !bid.placed).length;
  const placed = wanting.length - bare;
  if (bare === open) return open === 1 ? 'it has no proxy yet' : 'none has a proxy yet';
  return [
    bare > 0 && `${bare} ${bare === 1 ? 'has' : 'have'} no proxy yet`,
    placed > 0 && `${placed} ${placed === 1 ? 'bid needs' : 'bids need'} checking`,
  ]
    .filter(Boolean)
    .join(', ');
}
