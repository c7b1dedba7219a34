import * as z from 'zod/mini';
import { type LocalTime, localTimeSchema } from '../time/local-date.ts';

/** What a deadline can be counted from. */
export const COUNTED_FROM = ['sale', 'payment', 'delivery', 'title', 'notice'] as const;
export type CountedFrom = (typeof COUNTED_FROM)[number];

/** The last moment of a day, as far as a rule in minutes can say it. */
export const END_OF_DAY = '23:59' as LocalTime;

/**
 * A deadline as a sale's own rules state it. Nothing here is a rule of any real sale: the user copies it from the terms he
 * agreed to.
 */
export const deadlineRuleSchema = z
  .strictObject({
    amount: z.int().check(z.gte(0), z.lte(1500), z.describe('how many hours or days; 0 days is the same day')),
    unit: z.enum(['hours', 'calendar-days', 'business-days']),
    from: z.enum(COUNTED_FROM).check(z.describe('what the count starts from')),
    /** Rules differ by exactly this day, so it is asked and not guessed. */
    firstDay: z._default(
      z
        .enum(['same', 'next'])
        .check(z.describe('whether day 1 is the day it is counted from (same) or the day after it (next)')),
      'next',
    ),
    /** On the venue's own clock. Hours have none: they end when they end. */
    cutOff: z._default(
      localTimeSchema.check(z.describe('until when on the last day, on the venue’s clock')),
      END_OF_DAY,
    ),
    /** What comes after the cut-off, or on a closed day, counts as if it had come on the next business day. */
    lateCountsNextDay: z._default(
      z
        .boolean()
        .check(z.describe('anything after the cut-off hour or on a closed day counts as the next business day')),
      false,
    ),
    whenClosed: z._default(
      z.enum(['stays', 'next-business-day']).check(z.describe('what happens when the venue is closed on the last day')),
      'stays',
    ),
  })
  .check(
    z.refine((rule) => !(rule.firstDay === 'same' && rule.unit !== 'hours' && rule.amount === 0), {
      error: 'a day that counts as day 1 needs at least 1 day',
      path: ['amount'],
    }),
  );
export type DeadlineRule = z.infer<typeof deadlineRuleSchema>;
