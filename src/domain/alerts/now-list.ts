import { HOUR } from '../time/units.ts';
import { type AlertLot, closesBy, needsBid, nextClose } from './alert-lot.ts';

/** What wants a hand about now. */
export interface NowList<Lot extends AlertLot> {
  /** Closed lots without a result, the latest first. */
  readonly unanswered: readonly Lot[];
  /**
   * What closes within the hour, and what closes later today with a bid that wants a hand. Those on which somebody still has
   * to act come first, each kind the soonest first.
   */
  readonly hour: readonly Lot[];
  /** The others of today, the soonest first; where nothing closes today, the next few. */
  readonly today: readonly Lot[];
  /** Open lots that come later than those, the soonest first. */
  readonly later: readonly Lot[];
}

/** Late at night the day has few hours left, and what closes soon is of tomorrow. */
const AT_LEAST = 3 * HOUR;
/** What closed longer ago belongs to the list of results. */
const BEHIND = 24 * HOUR;
/** When nothing closes today, the next few are shown all the same. */
const NEXT_FEW = 3;
const MOST = 30;

/**
 * The lots of today, those just closed, and what comes later. A lot that is done with, or whose result is known, is not among
 * them.
 * @param dayEnds the end of the store's day
 */
export function nowList<Lot extends AlertLot>(lots: readonly Lot[], dayEnds: number, now: number): NowList<Lot> {
  const live = lots
    .filter((lot) => !lot.ended && lot.done !== true)
    .sort((a, b) => nextClose(a, now) - nextClose(b, now));
  // Between two readings of its close a lot may still be open.
  const open = live.filter((lot) => closesBy(lot) > now);
  const until = Math.max(dayEnds, now + AT_LEAST);
  const ofToday = open.filter((lot) => nextClose(lot, now) <= until).slice(0, MOST);
  // Whether there is a bid is known at once; how it stands is worked out only for those.
  const isOfHour = (lot: Lot) => nextClose(lot, now) <= now + HOUR || (lot.bid.placed && needsBid(lot));
  const hour = ofToday.filter(isOfHour);
  const today = ofToday.length > 0 ? ofToday.filter((lot) => !hour.includes(lot)) : open.slice(0, NEXT_FEW);
  return {
    unanswered: live
      .filter((lot) => closesBy(lot) <= now && closesBy(lot) > now - BEHIND && lot.since < closesBy(lot))
      .reverse()
      .slice(0, MOST),
    hour: [...hour.filter(needsBid), ...hour.filter((lot) => !needsBid(lot))],
    today,
    later: open.slice(hour.length + today.length),
  };
}
