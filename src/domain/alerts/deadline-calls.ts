import { MINUTE } from '../time/units.ts';
import type { Alert } from './alert.ts';
import type { Deadline } from './deadline.ts';
import { atMost, lateWords, roughly } from './say-late.ts';

interface DeadlineCall {
  readonly deadline: Deadline;
  readonly key: string;
  readonly dueAt: number;
  readonly passed: readonly string[];
}

/** More deadlines than this at once become one notice. */
const MOST_AT_ONCE = 3;
const NAMED = 6;

/** What is due of the deadlines, and when the next call comes (`Infinity` when none does). */
export function planDeadlines(
  deadlines: readonly Deadline[],
  shownKeys: { has(key: string): boolean },
  now: number,
): { readonly due: readonly Alert[]; readonly next: number } {
  const due: DeadlineCall[] = [];
  let next = Number.POSITIVE_INFINITY;
  for (const deadline of deadlines) {
    const calls = deadline.leads.map((lead) => ({
      deadline,
      key: `${deadline.key} ${lead} ${deadline.at}`,
      dueAt: deadline.at - lead * MINUTE,
    }));
    for (const { dueAt } of calls) if (dueAt > now) next = Math.min(next, dueAt);
    const ready = calls.filter(({ dueAt }) => dueAt <= now);
    const last = ready.at(-1);
    if (last === undefined || shownKeys.has(last.key)) continue;
    const passed = ready.filter(({ key }) => key !== last.key && !shownKeys.has(key)).map(({ key }) => key);
    due.push({ ...last, passed });
  }
  const soonest = due.toSorted((a, b) => a.deadline.at - b.deadline.at);
  return { due: due.length > MOST_AT_ONCE ? [sayMany(soonest, now)] : soonest.map((call) => sayOne(call, now)), next };
}

function sayOne({ deadline, key, dueAt, passed }: DeadlineCall, now: number): Alert {
  return {
    about: `deadline-${deadline.key}`,
    keys: [key, ...passed],
    title: `${lateWords(dueAt, now)}${deadline.title}: ${endWords(deadline, now)}`,
    body: deadline.body,
    loudness: deadline.quiet === true ? 'quiet' : 'loud',
    route: deadline.route,
    offers: [],
    rank: rankOf(deadline, now),
  };
}

function sayMany(soonest: readonly DeadlineCall[], now: number): Alert {
  const first = soonest[0];
  if (first === undefined) throw new Error('no deadline is due');
  return {
    about: 'deadlines',
    keys: soonest.flatMap(({ key, passed }) => [key, ...passed]),
    title: `${soonest.length} deadlines; the first ${endWords(first.deadline, now)}`,
    body: atMost(NAMED, soonest, ({ deadline }) => `${deadline.title}: ${endWords(deadline, now)}`).join('\n'),
    loudness: soonest.every(({ deadline }) => deadline.quiet === true) ? 'quiet' : 'loud',
    route: first.deadline.route,
    offers: [],
    rank: rankOf(first.deadline, now),
  };
}

const endWords = ({ at }: Deadline, now: number) =>
  at > now ? `due in ${roughly(at - now)}` : `was due ${roughly(now - at)} ago`;

const rankOf = ({ at, quiet }: Deadline, now: number): Alert['rank'] =>
  at > now ? [quiet === true ? 4 : 1, at] : [4, -at];
