import { HOUR } from '../time/units.ts';
import type { Alert } from './alert.ts';

/** What may be said now, and what waits on the Now screen. */
export interface Budgeted {
  readonly due: readonly Alert[];
  readonly held: readonly Alert[];
  /** When something that waits may be said; `Infinity` where nothing waits. */
  readonly next: number;
}

/** The ranks from which on an alert asks for nothing before a close: what closed, how it ended, the list of the evening before. */
const CALM = 3;
const DIGEST = 6;

/**
 * Holds alerts back that the user's limit for one hour leaves no room for. What somebody must act on now is always said. What
 * asks for nothing before a close leaves the last place of the hour to what does.
 * @param alerts the greatest need first
 * @param spoken when the notices of the last hour appeared, in milliseconds since 1970
 * @param most how many an hour; null for no limit
 */
export function withinBudget(
  alerts: readonly Alert[],
  spoken: readonly number[],
  most: number | null,
  now: number,
): Budgeted {
  if (most === null) return { due: alerts, held: [], next: Number.POSITIVE_INFINITY };
  const recent = spoken.filter((at) => at > now - HOUR && at <= now);
  const due: Alert[] = [];
  const held: Alert[] = [];
  for (const alert of alerts) {
    const count = recent.length + due.length;
    const calm = alert.rank[0] >= CALM;
    const fits = calm ? count === 0 || count + 2 <= most : count + 1 <= most;
    (fits || mustBeSaid(alert) ? due : held).push(alert);
  }
  const frees = Math.min(...recent, ...(due.length > 0 ? [now] : [])) + HOUR;
  return { due, held, next: held.length === 0 ? Number.POSITIVE_INFINITY : frees };
}

const mustBeSaid = ({ loudness, rank }: Alert): boolean => rank[0] === 0 || (loudness === 'loud' && rank[0] < DIGEST);
