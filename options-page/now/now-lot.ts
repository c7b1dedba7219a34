import type { AlertLot } from '../../src/domain/alerts/alert-lot.ts';
import type { BidState } from '../../src/domain/bid/bid-state.ts';
import type { Cents } from '../../src/domain/money/cents.ts';
import type { ClockCorrection } from '../../src/domain/time/clock-correction.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { alertLot } from '../../src/views/lots/alert-lots.ts';
import { stopOfStanding } from '../../src/views/lots/bids.ts';
import type { LotWorks, Standing } from '../../src/views/lots/standing.ts';

/** A lot as the Now view needs it: as the alerts see it, with all that is known of it. */
export interface NowLot extends AlertLot {
  readonly state: LotState;
  readonly standing: Standing;
  /** Where to stop: null when nothing is to be bid; undefined when it can’t be worked out. */
  readonly stopAt: Cents | null | undefined;
  /** What our bid on it really is. */
  readonly bidAt: (now: number) => BidState;
}

/** Lots with a close; the standing of each is worked out only when it is shown. */
export function nowLots(
  lots: readonly LotState[],
  works: LotWorks,
  corrections: readonly ClockCorrection[],
  me?: string,
): NowLot[] {
  return lots.flatMap((state) => {
    const alert = alertLot(state, works, corrections, me);
    if (alert === null) return [];
    return Object.defineProperties(alert as NowLot, {
      state: { value: state },
      bidAt: { value: (now: number) => works.bids.at(state, now) },
      stopAt: { get: () => stopOfStanding(works.of(state)) },
      standing: { get: () => works.of(state) },
    });
  });
}
