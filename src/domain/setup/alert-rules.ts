import * as z from 'zod/mini';
import { type LocalTime, localTimeSchema } from '../time/local-date.ts';
import { MINUTES_A_DAY } from '../time/units.ts';

const minutes = (most: number) => z.int().check(z.gte(1), z.lte(most), z.describe('minutes'));
const leadsUpTo = (most: number, before: string) =>
  z.array(minutes(most)).check(
    z.maxLength(10),
    z.refine((list) => list.every((lead, i) => i === 0 || lead < (list[i - 1] ?? 0)), {
      error: `minutes before ${before} must go from the earliest call to the last`,
    }),
  );
const leads = leadsUpTo(MINUTES_A_DAY, 'a close');

/**
 * When the tool speaks up. Only the minutes before a close are always there; `null` turns a rule off.
 * `nearMinutes` and `reactionMinutes` say what counts as near the busy hours and as closing at the same time.
 */
export const alertRulesSchema = z.strictObject({
  leadMinutes: z._default(
    leads.check(z.minLength(1), z.describe('reminders before a close whose proxy is not placed')),
    [30, 10],
  ),
  placedLeadMinutes: z._default(leads.check(z.describe('reminders before a close whose proxy is placed')), []),
  deadlineLeadMinutes: z._default(
    leadsUpTo(30 * MINUTES_A_DAY, 'a deadline').check(
      z.minLength(1),
      z.describe('reminders before a deadline after the sale: paying, papers, a claim, an answer'),
    ),
    [MINUTES_A_DAY, 3 * 60],
  ),
  digestAt: z._default(
    z.nullable(localTimeSchema.check(z.describe('the evening before a day with closings in the busy hours'))),
    '19:00' as LocalTime,
  ),
  beforeRushMinutes: z._default(z.nullable(minutes(MINUTES_A_DAY)), 30),
  afterCloseMinutes: z._default(z.nullable(minutes(MINUTES_A_DAY)), 5),
  nearMinutes: z._default(
    z.int().check(z.gte(0), z.lte(12 * 60), z.describe('closings this near to the busy hours are included')),
    30,
  ),
  reactionMinutes: z._default(
    z.int().check(z.gte(0), z.lte(60), z.describe('closings this near to each other share one reminder')),
    3,
  ),
  hourlyMost: z._default(
    z.nullable(z.int().check(z.gte(1), z.lte(60), z.describe('reminders an hour; last reminders come beyond it'))),
    null,
  ),
});
export type AlertRules = z.infer<typeof alertRulesSchema>;
