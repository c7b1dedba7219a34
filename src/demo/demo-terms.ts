import type * as z from 'zod/mini';
import type { deadlineRuleSchema } from '../domain/deadline/deadline-rule.ts';
import type { afterSaleRulesSchema } from '../domain/setup/after-sale-rules.ts';

type Rule = z.input<typeof deadlineRuleSchema>;
type Terms = z.input<typeof afterSaleRulesSchema>;

const business = (amount: number, from: Rule['from'], cutOff = '17:00'): Rule => ({
  amount,
  unit: 'business-days',
  from,
  cutOff,
});
const days = (amount: number, from: Rule['from'], more: Partial<Rule> = {}): Rule => ({
  amount,
  unit: 'calendar-days',
  from,
  cutOff: '17:00',
  ...more,
});
const hours = (amount: number, from: Rule['from']): Rule => ({ amount, unit: 'hours', from });

/** What the invented venues say about the time after the hammer: each counts in its own way. */
export const DEMO_TERMS: Readonly<Record<'saguaro' | 'saltmarsh' | 'caliche' | 'fogline', Terms>> = {
  saguaro: {
    steps: {
      pay: business(2, 'sale'),
      transport: days(5, 'sale'),
      inspect: days(1, 'delivery'),
      title: days(30, 'sale'),
      fund: business(2, 'sale'),
    },
    disputes: {
      'bid-not-taken': { claim: hours(24, 'sale') },
      'hidden-defect': { claim: days(7, 'delivery'), answer: business(2, 'notice') },
      'wrong-description': { claim: days(7, 'delivery'), answer: business(2, 'notice') },
      'title-missing': { claim: days(45, 'sale') },
    },
  },
  saltmarsh: {
    calendar: { holidays: 'bank', closed: [], worked: ['columbus'] },
    steps: { pay: business(3, 'sale', '15:00'), title: days(21, 'payment'), inspect: business(1, 'delivery', '15:00') },
    disputes: {
      'hidden-defect': { claim: business(5, 'delivery', '15:00'), answer: hours(48, 'notice') },
      'wrong-description': { claim: business(5, 'delivery', '15:00'), answer: hours(48, 'notice') },
      'sale-undone': { claim: business(2, 'notice', '15:00'), answer: hours(48, 'notice') },
    },
  },
  caliche: {
    calendar: { daysOff: ['sun'] },
    steps: { pay: days(2, 'sale', { whenClosed: 'next-business-day' }), title: days(30, 'sale') },
    disputes: { 'hidden-defect': { claim: days(3, 'sale', { firstDay: 'same', whenClosed: 'next-business-day' }) } },
  },
  fogline: {
    steps: { pay: business(5, 'sale'), title: days(30, 'sale') },
    disputes: { 'hidden-defect': { claim: days(10, 'sale') }, 'title-missing': { claim: days(45, 'sale') } },
  },
};
