import * as z from 'zod/mini';
import { stepNoteSchema } from '../../domain/after-sale/win-step.ts';
import {
  CLEARABLE,
  disputeChangeSchema,
  disputeOutcomeSchema,
  disputeSchema,
  disputeStepSchema,
} from '../../domain/dispute/dispute.ts';
import { entryIdSchema } from '../ids.ts';

/** What follows the hammer, each about one lot. A dispute goes by the id of the entry that opened it. */
export const AFTER_SALE = [
  z.strictObject({ kind: z.literal('step-noted'), ...stepNoteSchema.shape }),
  z.strictObject({ kind: z.literal('dispute-opened'), opened: disputeSchema }),
  z.strictObject({
    kind: z.literal('dispute-changed'),
    dispute: entryIdSchema,
    set: disputeChangeSchema,
    clear: z._default(z.array(z.enum(CLEARABLE)), []),
  }),
  z.strictObject({ kind: z.literal('dispute-stepped'), dispute: entryIdSchema, step: disputeStepSchema }),
  /** A later one corrects it; undoing it opens the dispute again. */
  z.strictObject({ kind: z.literal('dispute-closed'), dispute: entryIdSchema, outcome: disputeOutcomeSchema }),
] as const;
