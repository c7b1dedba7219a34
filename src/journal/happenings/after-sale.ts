import * as z from 'zod/mini';
import { type NotedStepName, stepNoteSchema } from '../../domain/after-sale/win-step.ts';
import {
  CLEARABLE,
  disputeChangeSchema,
  disputeOutcomeSchema,
  disputeSchema,
  disputeStepSchema,
} from '../../domain/dispute/dispute.ts';
import { type EntryId, entryIdSchema } from '../ids.ts';
import { type AfterSaleState, type DisputeState, NOTHING_AFTER } from '../states/after-sale-state.ts';
import { aboutLot } from './row.ts';

/** Of these every note counts, as each is an amount of its own. */
const ADDED_UP: ReadonlySet<NotedStepName> = new Set(['pay', 'refund']);

/** What follows the hammer, each about one lot. A dispute goes by the id of the entry that opened it. */
export const AFTER_SALE = [
  aboutLot('step-noted', stepNoteSchema.shape, {
    fold({ after = NOTHING_AFTER }, { kind: _, step, done, ...what }, noted) {
      const { [step]: earlier = [], ...others } = after.steps;
      if (!done) return { after: { ...after, steps: others } };
      const kept = ADDED_UP.has(step) ? earlier : [];
      return { after: { ...after, steps: { ...others, [step]: [...kept, { ...what, ...noted }] } } };
    },
    undo: 'where made',
    pack: 'dispute',
  }),
  aboutLot(
    'dispute-opened',
    { opened: disputeSchema },
    {
      fold: ({ after = NOTHING_AFTER }, { opened }, noted) => ({
        after: withDisputes(after, [...after.disputes, { ...opened, ...noted, steps: [] }]),
      }),
      undo: 'where made',
      pack: 'dispute',
    },
  ),
  aboutLot(
    'dispute-changed',
    {
      dispute: entryIdSchema,
      set: disputeChangeSchema,
      clear: z._default(z.array(z.enum(CLEARABLE)), []),
    },
    {
      fold: ({ after }, { dispute, set, clear }) =>
        changed(after, dispute, (one) => {
          const left = { ...one };
          for (const field of clear) delete left[field];
          return { ...left, ...set };
        }),
      undo: 'where made',
      pack: 'dispute',
    },
  ),
  aboutLot(
    'dispute-stepped',
    { dispute: entryIdSchema, step: disputeStepSchema },
    {
      fold: ({ after }, { dispute, step }, noted) =>
        changed(after, dispute, (one) => ({ ...one, steps: [...one.steps, { ...step, ...noted }] })),
      undo: 'where made',
      pack: 'dispute',
    },
  ),
  /** A later one corrects it; undoing it opens the dispute again. */
  aboutLot(
    'dispute-closed',
    { dispute: entryIdSchema, outcome: disputeOutcomeSchema },
    {
      fold: ({ after }, { dispute, outcome }, noted) =>
        changed(after, dispute, (one) => ({ ...one, outcome: { ...outcome, ...noted } })),
      undo: 'where made',
      pack: 'dispute',
    },
  ),
] as const;

/** Entries about a dispute whose opening was undone, or is still on another device, wait in the journal. */
function changed(
  after: AfterSaleState | undefined,
  id: EntryId,
  change: (dispute: DisputeState) => DisputeState,
): { after?: AfterSaleState } {
  if (after === undefined || !after.disputes.some(({ entry }) => entry === id)) return {};
  return {
    after: withDisputes(
      after,
      after.disputes.map((dispute) => (dispute.entry === id ? change(dispute) : dispute)),
    ),
  };
}

function withDisputes(after: AfterSaleState, disputes: readonly DisputeState[]): AfterSaleState {
  return { ...after, disputes, disputed: disputes.some(({ outcome }) => outcome === undefined) ? 'open' : 'closed' };
}
