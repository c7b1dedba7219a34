import type { CountedFrom, DeadlineRule } from '../../../src/domain/deadline/deadline-rule.ts';
import { deadlineRuleSchema } from '../../../src/domain/deadline/deadline-rule.ts';

/**
 * A rule to be corrected at once from the venue's terms: one business day, so that until then the tool calls too early and
 * not too late.
 */
export const newRule = (from: CountedFrom): DeadlineRule =>
  deadlineRuleSchema.parse({ amount: 1, unit: 'business-days', from, cutOff: '17:00' });
