import { whoActs } from '../../acts/lot-acts.ts';
import type { AlertLot } from '../../domain/alerts/alert-lot.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Standing } from './standing.ts';

/** Lots as the alert plan sees them; those without a close, or no longer watched, are left out. */
export function alertLots(lots: readonly LotState[], standingOf: (lot: LotState) => Standing): AlertLot[] {
  return lots.flatMap((lot) => alertLot(lot, standingOf) ?? []);
}

/** One lot in the words of an alert, which are worked out only when somebody reads them. */
export function alertLot(lot: LotState, standingOf: (lot: LotState) => Standing): AlertLot | null {
  const { facts, clock, sale, dropped } = lot;
  const close = facts.close?.instant;
  if (close === undefined || dropped) return null;
  return {
    id: lot.id,
    close,
    get name() {
      return lotTitle(facts);
    },
    get stop() {
      return stopWords(standingOf(lot));
    },
    ...whoActs(lot),
    // A bid that waits for the seller is a result for the clock: nothing is left to call for.
    ended: sale?.result !== undefined,
    since: lot.addedAt,
    done: clock?.doneFor === close,
    putOffUntil: clock?.putOffUntil,
    extendedAt: clock?.extended?.to === close ? clock.extended.at : undefined,
    ownLeads: clock?.leadMinutes,
  };
}

/** "Stop at $9,725." */
function stopWords({ maxBid, missing }: Standing): string {
  if (missing.length > 0) return 'No max bid yet.';
  return maxBid === null ? 'No price pays.' : `Stop at ${formatMoney(maxBid)}.`;
}
