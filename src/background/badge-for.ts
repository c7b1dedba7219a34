import type { Badge } from '../browser/badge.ts';
import type { Alert } from '../domain/alerts/alert.ts';
import { type AlertLot, closesBy, needsBid, nextClose } from '../domain/alerts/alert-lot.ts';
import { DAY, HOUR } from '../domain/time/units.ts';

/** The button has no room for more, so nobody counts further. */
const MOST = 999;

/**
 * What the toolbar button says without being asked: how many lots want something now, which are those that close within the
 * hour and those whose bid was passed or stands over max; else how many close within a day and want an act. It carries what
 * a notice can't where notices are turned off or nobody sees them.
 */
export function badgeFor(given: {
  readonly lots: readonly AlertLot[];
  readonly due: readonly Alert[];
  readonly allowed: boolean;
  readonly now: number;
}): Badge {
  const { lots, due, allowed, now } = given;
  const { bare, placed, today } = counted(lots, now);
  const unsaid = allowed ? 0 : due.length;
  const said = [
    unsaid > 0 &&
      `${unsaid} ${unsaid === 1 ? 'reminder' : 'reminders'} that could not be shown: notifications are turned off`,
    placed > 0 && `${placed} ${placed === 1 ? 'bid needs' : 'bids need'} checking`,
    bare > 0 && `${bare} ${bare === 1 ? 'lot closes' : 'lots close'} within the hour without a proxy`,
    bare === 0 && today > 0 && `${today} ${today === 1 ? 'lot closes' : 'lots close'} within a day without a proxy`,
  ].filter(Boolean);
  const pressing = bare + placed;
  const figure = Math.max(unsaid, pressing) || today;
  const urgent = unsaid > 0 || pressing > 0;
  return {
    text: figure === 0 ? '' : `${figure > MOST ? '1k+' : figure}${urgent ? '!' : ''}`,
    title: said.length === 0 ? 'Headroom' : `Headroom: ${said.join('; ')}`,
    urgent,
  };
}

/** Lots that want an act: bids that are in, however far off their close is; and those without one, within the hour and the day. */
function counted(lots: readonly AlertLot[], now: number) {
  let [bare, placed, today] = [0, 0, 0];
  for (const lot of lots) {
    if (closesBy(lot) <= now || bare + placed + today > MOST) continue;
    if (lot.bid.placed) placed += Number(needsBid(lot));
    else if (nextClose(lot, now) <= now + DAY && needsBid(lot)) {
      today += 1;
      bare += Number(nextClose(lot, now) <= now + HOUR);
    }
  }
  return { bare, placed, today };
}
