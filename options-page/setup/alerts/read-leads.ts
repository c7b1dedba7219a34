import { type Outcome, ok, refuse } from '../../../src/domain/outcome.ts';

const MOST = 10;
const DAY = 24 * 60;

/** Reads the minutes before a close as a list, in any order: "60, 15, 5", "1h 15". Kept from the earliest call to the last. */
export function readLeads(text: string): Outcome<number[]> {
  const parts = text.split(/[\s,;]+|\band\b/i).filter((part) => part !== '' && !/^(min|mins|minutes?)$/i.test(part));
  const minutes: number[] = [];
  for (const part of parts) {
    const figure = /^(\d{1,4})(h|min|m)?$/i.exec(part);
    if (figure === null)
      return refuse('not-minutes', `“${part}” is not a number of minutes. Write them like 60, 15, 5.`);
    const value = Number(figure[1]) * (figure[2]?.toLowerCase() === 'h' ? 60 : 1);
    if (value < 1 || value > DAY)
      return refuse('out-of-range', `Between 1 minute and a day (1,440 minutes), not ${part}.`);
    minutes.push(value);
  }
  const distinct = [...new Set(minutes)].sort((a, b) => b - a);
  return distinct.length > MOST ? refuse('too-many', `At most ${MOST} calls.`) : ok(distinct);
}
