import type { ClockCorrection } from '../time/clock-correction.ts';
import { DAY, MINUTE } from '../time/units.ts';
import type { Alert } from './alert.ts';
import { roughly } from './say-late.ts';

/** A look may come up to two minutes after the step, so it is not known more finely. */
const toFive = (ms: number) => Math.max(1, Math.round(ms / (5 * MINUTE))) * 5 * MINUTE;

/** Says once that the clock was set back; null if there is nothing to say, or it is too long ago. */
export function sayClockChange(
  corrections: readonly ClockCorrection[],
  shownKeys: { has(key: string): boolean },
  now: number,
): Alert | null {
  const last = corrections.find(({ to }) => to > now - DAY && to <= now);
  const key = `clock-told ${last?.to}`;
  if (last === undefined || shownKeys.has(key)) return null;
  return {
    about: 'clock',
    keys: [key],
    title: `This computer’s clock was put back by about ${roughly(toFive(last.showed - last.to))}`,
    body: 'Reminders that it made come too early come again at their time, and lots that came in meanwhile are planned by the right time.',
    loudness: 'quiet',
    route: '#/now',
    offers: [],
    rank: [5, now],
  };
}
