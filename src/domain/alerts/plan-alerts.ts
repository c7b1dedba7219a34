import { attempt, attemptEach, type CantWorkOut } from '../attempt.ts';
import { closeTogether } from '../rush/collisions.ts';
import type { RushCalendar } from '../rush/rush-bands.ts';
import type { AlertRules } from '../setup/alert-rules.ts';
import { type Instant, instant } from '../time/instant.ts';
import { MINUTE } from '../time/units.ts';
import type { Zone } from '../time/zone.ts';
import type { Alert, AlertPlan } from './alert.ts';
import { type AlertLot, closesBy, nextClose } from './alert-lot.ts';
import type { Deadline } from './deadline.ts';
import { planDeadlines } from './deadline-calls.ts';
import { afterKey, callsOfLot, earliestCall, type LotCall, newsOf } from './lot-calls.ts';
import { roundUps } from './round-ups.ts';
import { type DueCall, type Saying, sayBare, sayMany, sayOne, sayTogether } from './say-lots.ts';
import { sayRoundUp } from './say-round-up.ts';

export interface PlanInput {
  readonly lots: readonly AlertLot[];
  readonly deadlines: readonly Deadline[];
  readonly rules: AlertRules;
  /** The busy hours in store time. */
  readonly calendar: RushCalendar;
  /** The store's. */
  readonly zone: Zone;
  /** To whom lots were handed over before, the last one first. */
  readonly people: readonly string[];
  readonly shownKeys: { has(key: string): boolean };
  readonly now: Instant;
}

/** More notices about lots than this at once become one: a flood is read by nobody. */
const MOST_AT_ONCE = 3;

/**
 * The ladder: the evening before a busy day, before the rush, before each close, after it, and deadlines. What is due is
 * said now, however late; of several calls of one lot that have passed only the last is said, and a close that passed
 * without any is said as missed. Nothing is said twice, because a key says what it is about, its step and its close.
 */
export function planAlerts(input: PlanInput): AlertPlan {
  const { lots, rules, calendar, zone, people, shownKeys, now } = input;
  const saying: Saying = { zone, now, people };
  const { due, next: nextCall, failed } = dueCalls(input);
  // The calls of the lots come first: neither a deadline nor a list of them may take any away.
  const deadlines = attempt(() => planDeadlines(input.deadlines, shownKeys, now));
  const planned = attempt(() => roundUps(lots, { rules, calendar, zone }));
  const rounds = planned.ok ? planned.value.filter(({ key, staleAt }) => staleAt > now && !shownKeys.has(key)) : [];
  const said = attemptEach(
    rounds.filter(({ dueAt }) => dueAt <= now),
    (round) => sayRoundUp(round, zone, now),
  );
  const alerts: Alert[] = [
    ...sayLots(due, lots, rules.reactionMinutes, saying),
    ...said.done,
    ...(deadlines.ok ? deadlines.value.due : []),
  ];
  const next = Math.min(
    nextCall,
    deadlines.ok ? deadlines.value.next : Number.POSITIVE_INFINITY,
    ...rounds.map(({ dueAt }) => dueAt).filter((dueAt) => dueAt > now),
  );
  const mistakes = [
    ...failed,
    ...said.failed.map(({ why }) => why),
    ...[deadlines, planned].flatMap((each) => (each.ok ? [] : [each])),
  ];
  return {
    due: alerts.sort((a, b) => a.rank[0] - b.rank[0] || a.rank[1] - b.rank[1]),
    next: Number.isFinite(next) ? instant(next) : null,
    ...(mistakes.length > 0 && { failed: mistakes }),
  };
}

interface DueCalls {
  readonly due: readonly DueCall[];
  readonly next: number;
  readonly failed: readonly CantWorkOut[];
}

function dueCalls({ lots, rules, shownKeys, now }: PlanInput): DueCalls {
  const due: DueCall[] = [];
  const ahead: LotCall[] = [];
  let later = Number.POSITIVE_INFINITY;
  const { failed } = attemptEach(lots, (lot) => {
    // What was asked after its close leaves nothing to say, and its bid need not be worked out.
    if (closesBy(lot) <= now && shownKeys.has(afterKey(lot))) return;
    const news = closesBy(lot) > now ? newsOf(lot, shownKeys) : null;
    const earliest = earliestCall(lot, rules);
    if (news === null && earliest > now + rules.reactionMinutes * MINUTE) {
      later = Math.min(later, earliest);
      return;
    }
    const calls = callsOfLot(lot, rules);
    const ready = calls.filter(({ dueAt }) => dueAt <= now);
    for (const call of calls) if (call.dueAt > now && !shownKeys.has(call.key)) ahead.push(call);
    const last = news ?? ready.at(-1);
    if (last === undefined || shownKeys.has(last.key)) return;
    const before = news === null ? ready.slice(0, -1) : ready;
    due.push({
      ...last,
      passed: before.filter(({ key }) => !shownKeys.has(key)).map(({ key }) => key),
      told: before.some(({ key, step }) => step !== 'after' && shownKeys.has(key)),
    });
  });
  const pulled = pullForward(due, ahead, lots, rules.reactionMinutes, now);
  const taken = new Set(pulled.map(({ key }) => key));
  const next = ahead.reduce((soonest, { key, dueAt }) => (taken.has(key) ? soonest : Math.min(soonest, dueAt)), later);
  return { due: [...due, ...pulled], next, failed: failed.map(({ why }) => why) };
}

/** Calls that would follow within the reaction time, for lots that collide with one that is due: one call names them all. */
function pullForward(
  due: readonly DueCall[],
  ahead: readonly LotCall[],
  lots: readonly AlertLot[],
  reactionMinutes: number,
  now: number,
): DueCall[] {
  const open = due.filter(({ lot }) => closesBy(lot) > now);
  const soon = ahead.filter(({ step, dueAt }) => step === 'before' && dueAt <= now + reactionMinutes * MINUTE);
  if (open.length === 0 || soon.length === 0) return [];
  const groupOf = groups(lots, reactionMinutes, now);
  const begun = new Set(open.map(({ lot }) => groupOf.get(lot.id)));
  const said = new Set(due.map(({ lot }) => lot.id));
  const pulled: DueCall[] = [];
  for (const call of soon) {
    if (said.has(call.lot.id) || !begun.has(groupOf.get(call.lot.id))) continue;
    said.add(call.lot.id);
    pulled.push({ ...call, passed: [], told: false });
  }
  return pulled;
}

function sayLots(due: readonly DueCall[], lots: readonly AlertLot[], reactionMinutes: number, saying: Saying): Alert[] {
  if (due.length === 0) return [];
  const groupOf = groups(lots, reactionMinutes, saying.now);
  const closedOf = closedGroups(due, reactionMinutes, saying.now);
  const together = new Map<unknown, DueCall[]>();
  for (const call of due) {
    const group = closesBy(call.lot) > saying.now ? groupOf.get(call.lot.id) : (closedOf.get(call.lot.id) ?? call);
    const calls = together.get(group);
    if (calls === undefined) together.set(group, [call]);
    else calls.push(call);
  }
  if (together.size > MOST_AT_ONCE) return sayOrEach(due, saying, () => sayMany(due, saying));
  return [...together.values()].flatMap((calls) =>
    sayOrEach(calls, saying, () => {
      const [only] = calls;
      if (calls.length > 1 || only === undefined) return sayTogether(calls, saying);
      const group = groupOf.get(only.lot.id);
      return sayOne(only, closesBy(only.lot) > saying.now ? (group?.length ?? 1) - 1 : 0, saying);
    }),
  );
}

/** Lots that closed almost together by their group: three answers, and so no button that would give one for all. */
function closedGroups(due: readonly DueCall[], reactionMinutes: number, now: number) {
  const closed = due.filter(({ lot }) => closesBy(lot) <= now).map(({ lot }) => lot);
  return new Map(
    closeTogether(closed, reactionMinutes).flatMap((group) => group.map((lot) => [lot.id, group] as const)),
  );
}

/** Says calls in one; where that fails for one of them, each by itself, and what can't be said at least that it is due. */
function sayOrEach(calls: readonly DueCall[], saying: Saying, say: () => Alert): Alert[] {
  const said = attempt(say);
  if (said.ok) return [said.value];
  return calls.map((call) => {
    const one = attempt(() => sayOne(call, 0, saying));
    return one.ok ? one.value : sayBare(call, one.message);
  });
}

/** The lots that are still open by the group that they collide in. */
function groups(lots: readonly AlertLot[], reactionMinutes: number, now: number) {
  const open = lots
    .filter((lot) => closesBy(lot) > now && !lot.ended)
    .map((lot) => ({ id: lot.id, close: nextClose(lot, now) }));
  return new Map(closeTogether(open, reactionMinutes).flatMap((group) => group.map((lot) => [lot.id, group] as const)));
}
