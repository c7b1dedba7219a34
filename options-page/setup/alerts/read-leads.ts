import { type Outcome, ok, refuse } from '../../../src/domain/outcome.ts';
import { MINUTES_A_DAY } from '../../../src/domain/time/units.ts';

const MOST = 10;

/** Reads the minutes before a close as a list, in any order: "30, 10", "1h 15". Kept from the earliest call to the last. */
export function readLeads(text: string): Outcome<number[]> {
  const parts = text.split(/[\s,;]+|\band\b/i).filter((part) => part !== '' && !/^(min|mins|minutes?)$/i.test(part));
  const minutes: number[] = [];
  for (const part of parts) {
    const figure = /^(\d{1,4})(h|min|m)?$/i.exec(part);
    if (figure === null) return refuse('not-minutes', `“${part}” is not a number of minutes. Write them like 30, 10.`);
    const value = Number(figure[1]) * (figure[2]?.toLowerCase() === 'h' ? 60 : 1);
    if (value < 1 || value > MINUTES_A_DAY)
      return refuse('out-of-range', `Between 1 minute and a day (1,440 minutes), not ${part}.`);
    minutes.push(value);
  }
  return listed(minutes);
}

/** Reads the hours before a deadline as a list of minutes, in any order: "24, 3", "2 days 90min". Kept from the earliest on. */
export function readDeadlineLeads(text: string): Outcome<number[]> {
  const parts = text
    .replace(/(\d)\s+(?=[a-z])/gi, '$1')
    .split(/[\s,;]+|\band\b/i)
    .filter((part) => part !== '');
  const minutes: number[] = [];
  for (const part of parts) {
    const figure = /^(\d{1,4}(?:\.5)?)(d|days?|h|hours?|m|min|minutes?)?$/i.exec(part);
    if (figure === null) return refuse('not-hours', `“${part}” is not a number of hours. Write them like 24, 3.`);
    const value = Number(figure[1]) * MINUTES_IN[(figure[2] ?? 'h').charAt(0).toLowerCase() as 'd' | 'h' | 'm'];
    if (value < 1 || value > 30 * MINUTES_A_DAY || !Number.isInteger(value))
      return refuse('out-of-range', `Between 1 minute and 30 days (720 hours), not ${part}.`);
    minutes.push(value);
  }
  return listed(minutes);
}

const MINUTES_IN = { d: MINUTES_A_DAY, h: 60, m: 1 } as const;

function listed(minutes: readonly number[]): Outcome<number[]> {
  const distinct = [...new Set(minutes)].sort((a, b) => b - a);
  return distinct.length > MOST ? refuse('too-many', `At most ${MOST} reminders.`) : ok(distinct);
}
