import { type CloseTime, extendClose } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Entry } from '../journal/entry.ts';
import type { LotState } from './lot-state.ts';

/** What its user said back to a lot's alerts. Absent until he said something. */
export interface ClockState {
  readonly putOffUntil?: Instant;
  /** No more calls for the close at this moment. */
  readonly doneFor?: Instant;
  readonly handedTo?: { readonly to: string; readonly at: Instant };
  /** What the sale added so far; it is about the close `to`, and means nothing once another close is known. */
  readonly extended?: { readonly to: Instant; readonly minutes: number; readonly at: Instant };
  readonly leadMinutes?: readonly number[];
}

/** A lot after an entry of this kind about it; the same object when the entry says nothing of it. */
export function afterClock(lot: LotState, { at, happening }: Entry): LotState {
  const clock = lot.clock ?? {};
  switch (happening.kind) {
    case 'calls-put-off':
      return { ...lot, clock: { ...clock, putOffUntil: happening.until }, changedAt: at };
    case 'calls-done':
      return { ...lot, clock: { ...clock, doneFor: happening.close }, changedAt: at };
    case 'handed-over': {
      const { handedTo: _, ...rest } = clock;
      const handed = happening.to === null ? rest : { ...rest, handedTo: { to: happening.to, at } };
      return { ...lot, clock: handed, changedAt: at };
    }
    case 'lot-alerts-changed': {
      const { leadMinutes: _, ...rest } = clock;
      const own = happening.leadMinutes === null ? rest : { ...rest, leadMinutes: happening.leadMinutes };
      return { ...lot, clock: own, changedAt: at };
    }
    case 'close-extended': {
      const { close } = lot.facts;
      // Told twice, of the same close, it is still one extension.
      if (close?.instant !== happening.from) return lot;
      return extended(lot, close, happening.minutes, at);
    }
    default:
      return lot;
  }
}

function extended(lot: LotState, close: CloseTime, minutes: number, at: Instant): LotState {
  const later = extendClose(close, minutes);
  const before = lot.clock?.extended;
  const already = before?.to === close.instant ? before.minutes : 0;
  return {
    ...lot,
    facts: { ...lot.facts, close: later },
    clock: { ...lot.clock, extended: { to: later.instant, minutes: already + minutes, at } },
    changedAt: at,
  };
}
