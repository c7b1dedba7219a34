import { useMemo } from 'preact/hooks';
import { isAhead, momentsAhead, planOfLots } from '../../src/domain/alerts/lot-plan.ts';
import { correctionsIn } from '../../src/domain/time/clock-correction.ts';
import { readingsOfClose } from '../../src/domain/time/close-time.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { DAY } from '../../src/domain/time/units.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useShownAlerts } from '../../src/ui/hooks/use-shown-alerts.ts';
import { useStandingsNow } from '../../src/ui/hooks/use-standings.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { alertLots } from '../../src/views/lots/alert-lots.ts';
import { rushOf } from '../../src/views/lots/rush-words.ts';

/** A list comes on the evening before the day of a close, a call or a question at most a day from its close. */
const EARLIEST = 3 * DAY;
const LATEST = DAY;

export interface CallsAhead {
  /** When Headroom is to speak up from `from` up to but not including `to`, whatever about. */
  readonly moments: readonly Instant[];
  /** When this lot is to be called before its close. */
  readonly ofLot: (lot: LotState) => readonly Instant[];
}

/** What is still to be said in a stretch of time: the background's own plan, less what was said already. */
export function useCallsAhead(from: Instant, to: Instant, now: Instant): CallsAhead {
  const { lots, setup } = useWorkspace();
  const shown = useShownAlerts();
  const works = useStandingsNow();
  const corrections = useMemo(() => correctionsIn(shown?.keys() ?? []), [shown]);
  const rush = useMemo(() => ({ rules: setup.alerts, calendar: rushOf(setup), zone: setup.store.zone }), [setup]);
  const watched = useMemo(() => {
    const near = lots.filter(({ facts: { close } }) => {
      return close !== undefined && readingsOfClose(close).some((at) => at >= from - LATEST && at < to + EARLIEST);
    });
    return alertLots(near, works, corrections);
  }, [lots, from, to, works, corrections]);
  const moments = useMemo(
    () => (shown === null ? [] : [...momentsAhead(watched, rush, shown, now)].filter((at) => at >= from && at < to)),
    [watched, rush, shown, now, from, to],
  );
  const ofLot = useMemo(
    () => (lot: LotState) => {
      if (shown === null) return [];
      return planOfLots(alertLots([lot], works, corrections), rush, shown)
        .filter((call) => isAhead(call, now) && (call.step === 'before' || call.step === 'again'))
        .map(({ dueAt }) => instant(dueAt));
    },
    [rush, shown, now, works, corrections],
  );
  return { moments, ofLot };
}
