import { isAhead, type PlannedCall } from '../../domain/alerts/lot-plan.ts';
import { roughly } from '../../domain/alerts/say-late.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { sayClock, sayTime } from '../../domain/time/say-time.ts';
import { MINUTE } from '../../domain/time/units.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';

const LATE = 2 * MINUTE;

const STEP_WORDS: Record<PlannedCall['step'], string> = {
  digest: 'in the list the evening before',
  rush: 'in the reminder before busy hours',
  before: 'a reminder',
  again: 'a reminder, put off until then',
  after: 'asked how it ended',
  news: 'told at once',
};

/** What a step of the plan is. */
export const stepWords = (step: PlannedCall['step']): string => STEP_WORDS[step];

/** "ahead", "shown", "shown 5 h 55 min late", "not shown". */
export function callState({ dueAt, saidAt }: PlannedCall, now: Instant): string {
  if (saidAt === undefined) return dueAt > now ? 'ahead' : 'not shown';
  const late = saidAt - dueAt;
  return late > LATE ? `shown ${roughly(late)} late` : 'shown';
}

/** "Reminders at 11:05 AM, 11:50 AM and 12:00 PM. You will be asked how it ended at 12:10 PM." */
export function planWords(plan: readonly PlannedCall[], zone: Zone, now: Instant): string {
  const ahead = plan.filter((call) => isAhead(call, now));
  const calls = ahead.filter(({ step }) => step === 'before' || step === 'again');
  const asked = ahead.find(({ step }) => step === 'after');
  const question = asked && `asked how it ended at ${timeWords(asked.dueAt, zone, now)}`;
  if (calls.length === 0) return question ? `You will be ${question}.` : 'No more reminders for this lot.';
  const times = listed(calls.map(({ dueAt }) => timeWords(dueAt, zone, now)));
  return `Reminders at ${times}.${question ? ` You will be ${question}.` : ''}`;
}

/** The clock alone for today, else with its day. */
export function timeWords(at: Instant, zone: Zone, now: Instant): string {
  return dateIn(zone, at) === dateIn(zone, now) ? sayClock(at, zone) : sayTime(at, zone);
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
