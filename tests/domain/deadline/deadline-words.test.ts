import { expect, test } from 'vitest';
import type * as z from 'zod/mini';
import { FEDERAL_CALENDAR } from '../../../src/domain/deadline/business-calendar.ts';
import { deadlineOf } from '../../../src/domain/deadline/deadline-of.ts';
import { deadlineRuleSchema } from '../../../src/domain/deadline/deadline-rule.ts';
import { putOffInWords, ruleInWords, skippedInWords } from '../../../src/domain/deadline/deadline-words.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const rule = (given: z.input<typeof deadlineRuleSchema>) => deadlineRuleSchema.parse(given);

test.each([
  [
    { amount: 2, unit: 'business-days', from: 'sale', cutOff: '17:00' },
    '2 business days after the sale, until 5:00 PM on the venue’s clock',
  ],
  [{ amount: 1, unit: 'calendar-days', from: 'delivery' }, '1 calendar day after delivery'],
  [{ amount: 48, unit: 'hours', from: 'notice' }, '48 hours after the notice'],
  [
    { amount: 7, unit: 'calendar-days', from: 'sale', firstDay: 'same' },
    '7 calendar days after the sale, that day is day 1',
  ],
  [
    { amount: 0, unit: 'business-days', from: 'sale', cutOff: '12:00' },
    'on the day of the sale, until 12:00 PM on the venue’s clock',
  ],
  [
    { amount: 3, unit: 'calendar-days', from: 'title', whenClosed: 'next-business-day' },
    '3 calendar days after the title came in, moved to the next business day',
  ],
] as const)('%o reads: %s', (given, words) => {
  expect(ruleInWords(rule(given))).toBe(words);
});

test('what was not counted is said: each holiday by its name, days off of the week by their number', () => {
  const due = deadlineOf(
    rule({ amount: 3, unit: 'business-days', from: 'sale' }),
    instant(Date.parse('2026-11-25T10:00-07:00')),
    { zone: zone('America/Phoenix'), calendar: FEDERAL_CALENDAR },
  );
  expect(skippedInWords(due)).toBe('Not counted: Thu Nov 26 (Thanksgiving Day), 2 days off of the week.');
  expect(skippedInWords({ ...due, skipped: [] })).toBe('');
});

test.each([
  ['2026-11-24T16:59-07:00', ''],
  ['2026-11-24T17:30-07:00', 'The sale came after the cut-off, 5:00 PM, so it counts as Wed Nov 25.'],
  // Thanksgiving and the weekend are not open.
  ['2026-11-25T17:30-07:00', 'The sale came after the cut-off, 5:00 PM, so it counts as Fri Nov 27.'],
  ['2026-11-28T09:00-07:00', 'The sale came on a closed day, so it counts as Mon Nov 30.'],
] as const)('a sale at %s that is put off by the rule says so: %s', (at, words) => {
  const own = rule({ amount: 2, unit: 'business-days', from: 'sale', cutOff: '17:00', lateCountsNextDay: true });
  const due = deadlineOf(own, instant(Date.parse(at)), { zone: zone('America/Phoenix'), calendar: FEDERAL_CALENDAR });
  expect(putOffInWords(own, due)).toBe(words);
});
