import type { AlertLot } from '../domain/alerts/plan-alerts.ts';
import { lotTitle } from '../domain/lot/car-name.ts';
import { formatMoney } from '../domain/money/format-money.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { sayTime } from '../domain/time/say-time.ts';
import type { LotState } from '../journal/lot-state.ts';
import { standingsUnder } from '../ui/standing.ts';

/** Lots in the words of an alert, the price at which to stop worked out only when somebody reads it. */
export function alertLots(lots: readonly LotState[], setup: Setup): AlertLot[] {
  const standings = standingsUnder(setup);
  return lots.flatMap((lot) => {
    const close = lot.facts.close?.instant;
    if (close === undefined) return [];
    return {
      id: lot.id,
      close,
      name: lotTitle(lot.facts),
      closeWords: sayTime(close, setup.store.zone),
      placed: lot.facts.proxy !== undefined,
      get stop() {
        const { maxBid, missing } = standings.of(lot);
        if (missing.length > 0) return 'No max bid yet.';
        return maxBid === null ? 'No price pays.' : `Stop at ${formatMoney(maxBid)}.`;
      },
    };
  });
}
