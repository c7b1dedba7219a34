import { closeTogether } from '../rush/collisions.ts';
import { DAY, HOUR } from '../time/units.ts';
import { type AlertLot, closesBy, nextClose } from './alert-lot.ts';

/** What wants a hand about now. */
export interface NowList<Lot extends AlertLot> {
  /** Still open, the soonest first; lots that close almost together are one group. */
  readonly ahead: readonly (readonly Lot[])[];
  /** Closed lots without a result, the latest first. */
  readonly unanswered: readonly Lot[];
  /** Open lots that come later than those. */
  readonly later: number;
}

/** As far ahead as a person on duty has to think. */
const AHEAD = 3 * HOUR;
/** What closed longer ago belongs to the list of results. */
const BEHIND = DAY;
/** When nothing closes that soon, the next few are shown all the same. */
const NEXT_FEW = 3;
const MOST = 30;

/** The lots of the next hours and those just closed. A lot that is done with, or whose result is known, is not among them. */
export function nowList<Lot extends AlertLot>(
  lots: readonly Lot[],
  reactionMinutes: number,
  now: number,
): NowList<Lot> {
  const live = lots
    .filter((lot) => !lot.ended && lot.done !== true)
    .sort((a, b) => nextClose(a, now) - nextClose(b, now));
  // Between two readings of its close a lot may still be open.
  const open = live.filter((lot) => closesBy(lot) > now);
  const soon = open.filter((lot) => nextClose(lot, now) <= now + AHEAD).slice(0, MOST);
  const shown = soon.length > 0 ? soon : open.slice(0, NEXT_FEW);
  return {
    ahead: closeTogether(shown, reactionMinutes),
    unanswered: live
      .filter((lot) => closesBy(lot) <= now && closesBy(lot) > now - BEHIND && lot.since < closesBy(lot))
      .reverse()
      .slice(0, MOST),
    later: open.length - shown.length,
  };
}
