import type { AlertRules } from '../setup/alert-rules.ts';
import { type Instant, instant } from '../time/instant.ts';
import type { AlertLot } from './alert-lot.ts';
import { callsOfLot, type LotCall } from './lot-calls.ts';
import { type RoundUp, type RushRules, roundUps } from './round-ups.ts';

/** One time at which a lot is or was called, for its user to read. */
export interface PlannedCall {
  readonly key: string;
  readonly step: RoundUp['kind'] | LotCall['step'];
  readonly dueAt: Instant;
  /** When it was said; absent when it was not. */
  readonly saidAt?: Instant;
}

export type PlanRules = RushRules & { readonly rules: AlertRules };

/**
 * The whole plan of some lots in order: the lists that name them, each call, and the question afterwards. These are the
 * calls that the background makes, from the same two functions: what is shown as planned is what comes.
 * @param shown when alerts were recorded as shown, by their keys
 */
export function planOfLots(
  lots: readonly AlertLot[],
  rush: PlanRules,
  shown: ReadonlyMap<string, Instant>,
): PlannedCall[] {
  const rounds = roundUps(lots, rush).map(({ key, kind, dueAt }) => ({ key, step: kind, dueAt }));
  const calls = lots.flatMap((lot) => callsOfLot(lot, rush.rules, rush.calendar));
  const planned = [...rounds, ...calls].sort((a, b) => a.dueAt - b.dueAt);
  return planned.map(({ key, step, dueAt }) => {
    const saidAt = shown.get(key);
    return { key, step, dueAt: instant(Math.max(0, dueAt)), ...(saidAt !== undefined && { saidAt }) };
  });
}

/** The moments at which these lots still get a reminder, each once, in no order. */
export function momentsAhead(
  lots: readonly AlertLot[],
  rush: PlanRules,
  shownKeys: { has(key: string): boolean },
  now: number,
): ReadonlySet<Instant> {
  const moments = new Set<Instant>();
  const add = ({ key, dueAt }: { readonly key: string; readonly dueAt: number }) => {
    if (dueAt > now && !shownKeys.has(key)) moments.add(instant(dueAt));
  };
  roundUps(lots, rush).forEach(add);
  for (const lot of lots) callsOfLot(lot, rush.rules, rush.calendar).forEach(add);
  return moments;
}

/** Whether it is still to come. */
export const isAhead = ({ dueAt, saidAt }: PlannedCall, now: number): boolean => dueAt > now && saidAt === undefined;
