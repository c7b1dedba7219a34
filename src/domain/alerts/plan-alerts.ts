import { attempt, attemptEach, type CantWorkOut } from '../attempt.ts';
import { closeTogether } from '../rush/collisions.ts';
import { dutyAt } from '../rush/duty.ts';
import type { RushCalendar } from '../rush/rush-bands.ts';
import type { AlertRules } from '../setup/alert-rules.ts';
import { type Instant, instant } from '../time/instant.ts';
import { MINUTE } from '../time/units.ts';
import type { Zone } from '../time/zone.ts';
import type { Alert, AlertPlan } from './alert.ts';
import { type AlertLot, closesBy, nextClose, wantsAct } from './alert-lot.ts';
import type { Deadline } from './deadline.ts';
import { planDeadlines } from './deadline-calls.ts';
import { gather, isPressing, SEEN_AHEAD_MINUTES } from './gather.ts';
import { afterKey, callsOfLot, earliestCall, type LotCall, newsOf } from './lot-calls.ts';
import { roundUps } from './round-ups.ts';
import { type DueCall, type Saying, sayBare, sayOne } from './say-lots.ts';
import { awayKey, sayMeanwhile } from './say-meanwhile.ts';
import { sayRoundUp } from './say-round-up.ts';
import { sayClosed, sayPressing, saySoon } from './say-several.ts';
import { isCalledElsewhere, type OnDuty, type TeamWatch } from './team-watch.ts';

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
  /** The team, while this computer is in step with it: then some calls are another's. */
  readonly team?: TeamWatch | undefined;
  readonly shownKeys: { has(key: string): boolean };
  /** Since when nobody looked, where that was long: the browser was closed, or the computer asleep. */
  readonly awaySince?: Instant | undefined;
  readonly now: Instant;
}

/**
 * The ladder: the evening before a busy day, before the rush, before each close, after it, and deadlines. A lot whose bid is
 * not as it should be is named softly beforehand, with all that needs somebody in the next half hour, and aloud once: when
 * it is high time. What is due is said now, however late; of several calls of one lot that have passed only the last is
 * said, and a close that passed without any is said as missed. Nothing is said twice, because a key says what it is about,
 * its step and its close.
 */
export function planAlerts(input: PlanInput): AlertPlan {
  const { lots, rules, calendar, zone, people, shownKeys, team, now } = input;
  const saying: Saying = { zone, now, people, me: team?.me, onDuty: addressee(calendar, now) };
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
    ...sayLots(due, lots, rules, saying),
    ...closedMeanwhile(input, due, saying),
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

/** What closed while nobody looked and is not said by another notice: it is asked about later, and named at once. */
function closedMeanwhile({ lots, awaySince, shownKeys }: PlanInput, due: readonly DueCall[], saying: Saying): Alert[] {
  if (awaySince === undefined || shownKeys.has(awayKey(awaySince))) return [];
  const said = new Set(due.map(({ lot }) => lot.id));
  const closed = lots.filter((lot) => {
    const close = closesBy(lot);
    const open = !lot.ended && lot.done !== true && lot.since < close && !shownKeys.has(afterKey(lot));
    return open && close > awaySince && close <= saying.now && !said.has(lot.id);
  });
  const alert = attempt(() => sayMeanwhile(closed, awaySince, saying));
  return closed.length > 0 && alert.ok ? [alert.value] : [];
}

/** Whose name the reminders bear now; absent outside busy hours, and where the setup names nobody at all. */
function addressee(calendar: RushCalendar, now: Instant): string | undefined {
  const { who, isGap } = onDutyAt(calendar, now);
  return isGap ? 'The store' : who;
}

/** Who is on duty now; in a gap of the plan nobody is. */
function onDutyAt(calendar: RushCalendar, now: Instant): OnDuty & { readonly isGap: boolean } {
  const standing = attempt(() => calendar.of(now));
  const band = standing.ok && standing.value.kind === 'in' ? standing.value.band : undefined;
  const who = band && dutyAt(band.duty, now)?.who;
  return { busy: band !== undefined, who, isGap: band !== undefined && band.duty.length > 0 && who === undefined };
}

interface DueCalls {
  readonly due: readonly DueCall[];
  readonly next: number;
  readonly failed: readonly CantWorkOut[];
}

function dueCalls({ lots, rules, calendar, shownKeys, team, now }: PlanInput): DueCalls {
  const duty = onDutyAt(calendar, now);
  const due: DueCall[] = [];
  const ahead: LotCall[] = [];
  let later = Number.POSITIVE_INFINITY;
  const { failed } = attemptEach(lots, (lot) => {
    // What was asked after its close leaves nothing to say, and its bid need not be worked out.
    if (closesBy(lot) <= now && shownKeys.has(afterKey(lot))) return;
    const news = closesBy(lot) > now ? newsOf(lot, shownKeys, now) : null;
    const earliest = earliestCall(lot, rules);
    if (news === null && earliest > now + SEEN_AHEAD_MINUTES * MINUTE) {
      later = Math.min(later, earliest);
      return;
    }
    const calls = callsOfLot(lot, rules, calendar);
    const ready = calls.filter(({ dueAt }) => dueAt <= now);
    const coming = calls.filter((call) => call.dueAt > now && !shownKeys.has(call.key));
    // What is another's is not named along; who has it by then is looked at again.
    if (isCalledElsewhere({ lot, last: false }, team, duty, now))
      later = Math.min(later, ...coming.map((call) => call.dueAt));
    else ahead.push(...coming);
    // Of two readings of one close, the last call of the one weighs more than the first of the other.
    const pressing = ready.findLast((call) => call.last && call.close > now && !shownKeys.has(call.key));
    const last = news ?? pressing ?? ready.at(-1);
    if (last === undefined || shownKeys.has(last.key)) return;
    const before = ready.filter((call) => call !== last);
    const reminders = before.filter(({ step }) => step !== 'after');
    const isLast = last.last || (news !== null && lot.bid.news?.calm !== true && !coming.some((call) => call.last));
    if (isCalledElsewhere({ lot, last: isLast }, team, duty, now)) return;
    due.push({
      ...last,
      last: isLast,
      passed: before.filter(({ key }) => !shownKeys.has(key)).map(({ key }) => key),
      // A lot that was to get none was not missed.
      told: (last.step === 'after' && reminders.length === 0) || reminders.some(({ key }) => shownKeys.has(key)),
    });
  });
  const gathered = gather(due, ahead, rules.reactionMinutes, now);
  return { due: gathered.due, next: Math.min(later, gathered.next), failed: failed.map(({ why }) => why) };
}

/** At most four notices: what is high time, what comes soon, what closed unsaid, and how the others ended. */
function sayLots(due: readonly DueCall[], lots: readonly AlertLot[], rules: AlertRules, saying: Saying): Alert[] {
  if (due.length === 0) return [];
  const { now } = saying;
  const open = due.filter(({ lot }) => closesBy(lot) > now);
  const closed = due.filter(({ lot }) => closesBy(lot) <= now);
  const pressing = open.filter((call) => isPressing(call, now));
  const soft = open.filter((call) => !pressing.includes(call));
  const inHand = soft.length === 0 ? [] : pendingBeside(due, lots, rules, now);
  return [
    ...sayOrEach(pressing, saying, () => sayPressing(pressing, othersNear(pressing, lots, rules, now), saying)),
    ...sayOrEach(soft, saying, () => saySoon(soft, inHand, saying)),
    ...[false, true].flatMap((told) => {
      const some = closed.filter((call) => call.told === told);
      return sayOrEach(some, saying, () => sayClosed(some, saying));
    }),
  ];
}

/** Says calls in one; where that fails for one of them, each by itself, and what can't be said at least that it is due. */
function sayOrEach(calls: readonly DueCall[], saying: Saying, say: () => Alert): Alert[] {
  if (calls.length === 0) return [];
  const said = attempt(say);
  if (said.ok) return [said.value];
  return calls.map((call) => {
    const one = attempt(() => sayOne(call, 0, saying));
    return one.ok ? one.value : sayBare(call, one.message);
  });
}

/** What was said already and still waits for somebody: the notice that takes the place of that one names it again. */
function pendingBeside(due: readonly DueCall[], lots: readonly AlertLot[], { leadMinutes }: AlertRules, now: number) {
  const said = new Set(due.map(({ lot }) => lot.id));
  const until = now + Math.max(...leadMinutes) * MINUTE;
  return attemptEach(lots, (lot) => {
    const next = nextClose(lot, now);
    return !said.has(lot.id) && next > now && next <= until && wantsAct(lot) && (lot.putOffUntil ?? 0) <= now
      ? [lot]
      : [];
  }).done.flat();
}

/** How many more lots close so near to the only one that nobody can watch them one by one. */
function othersNear(calls: readonly DueCall[], lots: readonly AlertLot[], rules: AlertRules, now: number): number {
  const [only] = calls;
  if (calls.length !== 1 || only === undefined) return 0;
  const open = lots
    .filter((lot) => closesBy(lot) > now && !lot.ended)
    .map((lot) => ({ id: lot.id, close: nextClose(lot, now) }));
  const group = closeTogether(open, rules.reactionMinutes).find((some) => some.some(({ id }) => id === only.lot.id));
  return (group?.length ?? 1) - 1;
}
