import type { LocalTime } from '../time/local-date.ts';
import { sayDate } from '../time/say-time.ts';
import type { DueTime } from './deadline-of.ts';
import { type CountedFrom, type DeadlineRule, END_OF_DAY } from './deadline-rule.ts';

/** What a rule counts from, as it stands behind "after". */
export const FROM_WORDS: Readonly<Record<CountedFrom, string>> = {
  sale: 'the sale',
  payment: 'the payment',
  delivery: 'delivery',
  title: 'the title came in',
  notice: 'the notice',
};

/** "2 business days after the sale, until 5:00 PM on the venue’s clock". */
export function ruleInWords(rule: DeadlineRule): string {
  const { amount, unit, from, firstDay, cutOff, whenClosed } = rule;
  const after = FROM_WORDS[from];
  const length = `${amount} ${unitWords(rule)}`;
  const parts: string[] = [];
  if (unit !== 'hours' && amount === 0)
    parts.push(`on the day of ${after === 'the title came in' ? 'the title' : after}`);
  else parts.push(`${length} after ${after}`);
  if (unit !== 'hours' && cutOff !== END_OF_DAY) parts.push(`until ${clockWords(cutOff)} on the venue’s clock`);
  if (unit !== 'hours' && firstDay === 'same') parts.push('that day is day 1');
  if (whenClosed === 'next-business-day' && unit !== 'business-days') parts.push('moved to the next business day');
  return parts.join(', ');
}

/** Why days were counted from a later one than that of the event, as a sentence; empty where they were not. */
export function putOffInWords({ from, cutOff }: DeadlineRule, { putOff, countedFrom }: DueTime): string {
  if (putOff === undefined) return '';
  const event = from === 'title' ? 'the title' : FROM_WORDS[from];
  const why = putOff === 'cut-off' ? `came after the cut-off, ${clockWords(cutOff)}` : 'came on a closed day';
  return `${capital(event)} ${why}, so it counts as ${sayDate(countedFrom)}.`;
}

/** Which days were passed over, as a sentence; empty when none was. Days off in a row are said once. */
export function skippedInWords({ skipped }: DueTime): string {
  const holidays = skipped.filter(({ why }) => !WEEKDAY.test(why));
  const weekend = skipped.length - holidays.length;
  const parts = [
    ...holidays.map(({ date, why }) => `${sayDate(date)} (${why})`),
    ...(weekend > 0 ? [`${weekend} ${weekend === 1 ? 'day' : 'days'} off of the week`] : []),
  ];
  return parts.length === 0 ? '' : `Not counted: ${parts.join(', ')}.`;
}

const WEEKDAY = /^(Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day$/;

export function unitWords({ amount, unit }: Pick<DeadlineRule, 'amount' | 'unit'>): string {
  const one = amount === 1;
  switch (unit) {
    case 'hours':
      return one ? 'hour' : 'hours';
    case 'calendar-days':
      return one ? 'calendar day' : 'calendar days';
    case 'business-days':
      return one ? 'business day' : 'business days';
  }
}

function clockWords(time: LocalTime): string {
  const hour = Number(time.slice(0, 2));
  return `${hour % 12 === 0 ? 12 : hour % 12}:${time.slice(3)} ${hour < 12 ? 'AM' : 'PM'}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
