import * as z from 'zod/mini';
import { businessCalendarSchema } from '../deadline/business-calendar.ts';
import { deadlineRuleSchema } from '../deadline/deadline-rule.ts';

/** What follows a win, in the order in which it is usually done. */
export const WIN_STEPS = ['pay', 'transport', 'deliver', 'inspect', 'title', 'fund'] as const;
export type WinStep = (typeof WIN_STEPS)[number];

/** Why a sale is argued about. */
export const DISPUTE_REASONS = [
  'bid-not-taken',
  'hidden-defect',
  'wrong-description',
  'title-missing',
  'sale-undone',
  'other',
] as const;
export type DisputeReason = (typeof DISPUTE_REASONS)[number];

const disputeDeadlinesSchema = z.strictObject({
  /** Until when we may bring it up. */
  claim: z.optional(deadlineRuleSchema),
  /** Until when we must answer when another brought it up. */
  answer: z.optional(deadlineRuleSchema),
});

const stepRulesSchema = z.partial(
  z.strictObject({
    pay: deadlineRuleSchema,
    transport: deadlineRuleSchema,
    deliver: deadlineRuleSchema,
    inspect: deadlineRuleSchema,
    title: deadlineRuleSchema,
    fund: deadlineRuleSchema,
  }),
);

const disputeRulesSchema = z.partial(
  z.strictObject({
    'bid-not-taken': disputeDeadlinesSchema,
    'hidden-defect': disputeDeadlinesSchema,
    'wrong-description': disputeDeadlinesSchema,
    'title-missing': disputeDeadlinesSchema,
    'sale-undone': disputeDeadlinesSchema,
    other: disputeDeadlinesSchema,
  }),
);

/**
 * What a venue's own terms say about the time after the hammer. None of it is built in: terms differ from sale to sale
 * and from year to year, and the ones that were agreed to decide.
 */
export const afterSaleRulesSchema = z.strictObject({
  /** The days on which the venue works; business days are counted by it. */
  calendar: z.prefault(businessCalendarSchema, {}),
  steps: z._default(stepRulesSchema, {}),
  disputes: z._default(disputeRulesSchema, {}),
});
export type AfterSaleRules = z.infer<typeof afterSaleRulesSchema>;
