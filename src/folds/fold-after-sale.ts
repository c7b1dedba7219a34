import type { NotedStepName, StepDone } from '../domain/after-sale/win-step.ts';
import type { DisputeOutcome, DisputeRecord, DisputeStep } from '../domain/dispute/dispute.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Entry } from '../journal/entry.ts';
import type { EntryId } from '../journal/ids.ts';

/** Who wrote it down, when, and the entry to undo. */
export interface Noted {
  readonly entry: EntryId;
  readonly notedAt: Instant;
  readonly author: string;
}

export interface DisputeState extends DisputeRecord, Noted {
  readonly steps: readonly (DisputeStep & Noted)[];
  readonly outcome?: (DisputeOutcome & Noted) | undefined;
}

/** What followed the hammer. A lot of which nothing was noted has none of it. */
export interface AfterSaleState {
  readonly steps: Readonly<Partial<Record<NotedStepName, readonly (StepDone & Noted)[]>>>;
  /** In the order in which they were opened. */
  readonly disputes: readonly DisputeState[];
  /** Whether there is an open dispute, only closed ones, or (absent) none: the store finds lots by it. */
  readonly disputed?: 'open' | 'closed';
}

const NOTHING: AfterSaleState = { steps: {}, disputes: [] };
/** Of these every note counts, as each is an amount of its own. */
const ADDED_UP: ReadonlySet<NotedStepName> = new Set(['pay', 'refund']);

/** What follows the hammer after an entry about the lot that counts; the same object when the entry says nothing of it. */
export function afterSaleAfter(state: AfterSaleState | undefined, entry: Entry): AfterSaleState | undefined {
  const { happening } = entry;
  const before = state ?? NOTHING;
  const noted: Noted = { entry: entry.id, notedAt: entry.at, author: entry.author };
  switch (happening.kind) {
    case 'step-noted': {
      const { kind: _, step, done, ...what } = happening;
      const { [step]: earlier = [], ...others } = before.steps;
      if (!done) return { ...before, steps: others };
      const kept = ADDED_UP.has(step) ? earlier : [];
      return { ...before, steps: { ...others, [step]: [...kept, { ...what, ...noted }] } };
    }
    case 'dispute-opened':
      return withDisputes(before, [...before.disputes, { ...happening.opened, ...noted, steps: [] }]);
    case 'dispute-changed':
      return changed(state, happening.dispute, (dispute) => {
        const left = { ...dispute };
        for (const field of happening.clear) delete left[field];
        return { ...left, ...happening.set };
      });
    case 'dispute-stepped':
      return changed(state, happening.dispute, (dispute) => ({
        ...dispute,
        steps: [...dispute.steps, { ...happening.step, ...noted }],
      }));
    case 'dispute-closed':
      return changed(state, happening.dispute, (dispute) => ({
        ...dispute,
        outcome: { ...happening.outcome, ...noted },
      }));
    default:
      return state;
  }
}

/** What is said of a dispute whose opening was undone, or is still on another device, waits in the journal. */
function changed(
  state: AfterSaleState | undefined,
  id: EntryId,
  change: (dispute: DisputeState) => DisputeState,
): AfterSaleState | undefined {
  if (state === undefined || !state.disputes.some(({ entry }) => entry === id)) return state;
  return withDisputes(
    state,
    state.disputes.map((dispute) => (dispute.entry === id ? change(dispute) : dispute)),
  );
}

function withDisputes(state: AfterSaleState, disputes: readonly DisputeState[]): AfterSaleState {
  return { ...state, disputes, disputed: disputes.some(({ outcome }) => outcome === undefined) ? 'open' : 'closed' };
}
