import type { Badge } from '../browser/badge.ts';
import type { Alert } from '../domain/alerts/alert.ts';
import { type AlertLot, needsBid } from '../domain/alerts/alert-lot.ts';
import { DAY, HOUR } from '../domain/time/units.ts';

/**
 * What the toolbar button says without being asked: how many lots want something now, else how many close within a day
 * without a proxy. It carries what a notice can't where notices are turned off or nobody sees them.
 */
export function badgeFor(given: {
  readonly lots: readonly AlertLot[];
  readonly due: readonly Alert[];
  readonly allowed: boolean;
  readonly now: number;
}): Badge {
  const { lots, due, allowed, now } = given;
  const bare = lots.filter((lot) => lot.close > now && needsBid(lot));
  const soon = bare.filter(({ close }) => close <= now + HOUR).length;
  const today = bare.filter(({ close }) => close <= now + DAY).length;
  const unsaid = allowed ? 0 : due.length;
  const said = [
    unsaid > 0 && `${unsaid} ${unsaid === 1 ? 'call' : 'calls'} that could not be shown: notices are turned off`,
    soon > 0 && `${soon} ${soon === 1 ? 'lot closes' : 'lots close'} within the hour without a proxy`,
    soon === 0 && today > 0 && `${today} ${today === 1 ? 'lot closes' : 'lots close'} within a day without a proxy`,
  ].filter(Boolean);
  const urgent = unsaid > 0 || soon > 0;
  const figure = Math.max(unsaid, soon) || today;
  return {
    text: figure === 0 ? '' : `${figure > 999 ? '1k+' : figure}${urgent ? '!' : ''}`,
    title: said.length === 0 ? 'Headroom' : `Headroom: ${said.join('; ')}`,
    urgent,
  };
}
