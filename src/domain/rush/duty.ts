import type { Rush } from '../setup/store.ts';
import type { Instant } from '../time/instant.ts';
import { sayClock } from '../time/say-time.ts';
import type { Zone } from '../time/zone.ts';

/** A stretch of busy hours, and who watches the closings in it. */
export interface DutySpan {
  readonly from: Instant;
  /** Not included. */
  readonly to: Instant;
  /** Absent where the plan names nobody. */
  readonly who?: string | undefined;
}

/** Whether the setup names anybody for any hours. Where it does not, nothing is said of duty. */
export const hasDuty = ({ weekly, exceptions }: Rush): boolean =>
  [...weekly, ...exceptions.flatMap(({ hours }) => hours)].some(({ who }) => who !== undefined);

/** Hours that may overlap, as stretches in order: two people at once are named together, and one without a name is a gap. */
export function dutyOf(hours: readonly DutySpan[]): readonly DutySpan[] {
  const edges = [...new Set(hours.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const spans: DutySpan[] = [];
  for (const [i, from] of edges.entries()) {
    const to = edges[i + 1];
    const there = hours.filter((one) => one.from <= from && one.to > from);
    if (to === undefined || there.length === 0) continue;
    const names = [...new Set(there.flatMap(({ who }) => who ?? []))];
    const who = names.length === 0 ? undefined : names.join(' and ');
    const before = spans.at(-1);
    if (before?.to === from && before.who === who) spans[spans.length - 1] = { ...before, to };
    else spans.push({ from, to, who });
  }
  return spans;
}

/** The stretch that a moment falls in. */
export const dutyAt = (spans: readonly DutySpan[], at: number): DutySpan | undefined =>
  spans.find(({ from, to }) => at >= from && at < to);

/** Everybody who is named, each once. */
export const namesOn = (spans: readonly DutySpan[]): string[] => [...new Set(spans.flatMap(({ who }) => who ?? []))];

/** "the manager 10:00 AM to 3:00 PM, nobody 3:00 PM to 5:00 PM"; empty where the setup names nobody. */
export const dutyWords = (spans: readonly DutySpan[], zone: Zone): string =>
  spans.map(({ from, to, who }) => `${who ?? 'nobody'} ${sayClock(from, zone)} to ${sayClock(to, zone)}`).join(', ');
