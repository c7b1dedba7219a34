import * as z from 'zod/mini';
import { type LocalTime, localTimeSchema } from '../time/local-date.ts';

const minutes = (most: number) => z.int().check(z.gte(1), z.lte(most), z.describe('minutes'));
const leads = z.array(minutes(24 * 60)).check(
  z.maxLength(10),
  z.refine((list) => list.every((lead, i) => i === 0 || lead < (list[i - 1] ?? 0)), {
    error: 'minutes before a close must go from the earliest call to the last',
  }),
);

/**
 * When the tool speaks up. Only the minutes before a close are always there; `null` turns a rule off.
 * `nearMinutes` and `reactionMinutes` say what counts as near the busy hours and as closing at the same time.
 */
export const alertRulesSchema = z.strictObject({
  leadMinutes: z._default(
    leads.check(z.minLength(1), z.describe('calls before a close whose proxy is not placed')),
    [60, 15, 5],
  ),
  placedLeadMinutes: z._default(leads.check(z.describe('calls before a close whose proxy is placed')), [5]),
  digestAt: z._default(
    z.nullable(localTimeSchema.check(z.describe('the evening before a day with closings in the busy hours'))),
    '19:00' as LocalTime,
  ),
  beforeRushMinutes: z._default(z.nullable(minutes(24 * 60)), 30),
  afterCloseMinutes: z._default(z.nullable(minutes(24 * 60)), 5),
  nearMinutes: z._default(
    z.int().check(z.gte(0), z.lte(12 * 60), z.describe('this near to the busy hours is worth saying')),
    30,
  ),
  reactionMinutes: z._default(
    z.int().check(z.gte(0), z.lte(60), z.describe('closings this near to each other are one call')),
    3,
  ),
});
export type AlertRules = z.infer<typeof alertRulesSchema>;

/** The plain layer: one call a lot, this many minutes before it closes, and nothing else. */
export const simpleAlertRules = (leadMinutes: number): AlertRules =>
  alertRulesSchema.parse({
    leadMinutes: [leadMinutes],
    placedLeadMinutes: [leadMinutes],
    digestAt: null,
    beforeRushMinutes: null,
    afterCloseMinutes: null,
  });
