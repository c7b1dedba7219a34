import type { AlertPlan } from '../domain/alerts/alert.ts';
import type { AlertLot } from '../domain/alerts/alert-lot.ts';
import { withinBudget } from '../domain/alerts/budget.ts';
import type { Deadline } from '../domain/alerts/deadline.ts';
import { planAlerts } from '../domain/alerts/plan-alerts.ts';
import { sayClockChange } from '../domain/alerts/say-clock.ts';
import type { TeamWatch } from '../domain/alerts/team-watch.ts';
import { rushCalendar } from '../domain/rush/rush-bands.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { wholeSetup } from '../domain/setup/starting-setup.ts';
import type { ClockCorrection } from '../domain/time/clock-correction.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import { DAY, HOUR, MINUTE } from '../domain/time/units.ts';
import type { Store } from '../store/store.ts';
import { teamWatch } from '../store/team/team-watch.ts';
import { alertLots } from '../views/lots/alert-lots.ts';
import { standingsUnder } from '../views/lots/standing.ts';
import { peopleToHandTo } from '../views/people.ts';
import { plannedBids } from '../views/plan/kept-plan.ts';
import { deadlinesOf } from './deadlines.ts';
import type { World } from './world.ts';
import { seeClock } from './wrong-clock.ts';

/** What closed longer ago is history: the list of closings without a result says it better than a notice. */
const LOOK_BACK = 14 * DAY;
const LOOK_AHEAD = 9 * DAY;

/** Looks follow each other within two minutes: after this much the browser was closed, or the computer asleep. */
const AWAY = 15 * MINUTE;

/** All that reminders are planned from, as it is at one moment. */
export interface Sight {
  readonly lots: readonly AlertLot[];
  readonly deadlines: readonly Deadline[];
  readonly setup: Pick<Setup, 'alerts' | 'rush' | 'store'>;
  /** To whom lots were handed over before, the last one first. */
  readonly people: readonly string[];
  /** The team, while this computer is in step with it. */
  readonly team?: TeamWatch | undefined;
  /** The keys of what was said. */
  readonly shown: ReadonlySet<string>;
  /** When what was said in the last hour was said, each notice once. */
  readonly spoken: readonly number[];
  /** Since when nobody looked, where that was long; then what closed meanwhile is said. */
  readonly awaySince?: Instant | undefined;
  /** Those of what was said while the clock stood otherwise, and so is said again. */
  readonly again: readonly string[];
  /** When the clock was put back, the latest first. */
  readonly corrections: readonly ClockCorrection[];
  /** Says when anything that the words of the lots depend on has changed. */
  readonly signature: string;
}

/** Reads the store. @throws StoreUnavailable when the browser does not give us the data */
export async function sightOf(store: Store, world: World, now: Instant): Promise<Sight> {
  const [from, before] = [instant(Math.max(0, now - LOOK_BACK)), instant(now + LOOK_AHEAD)];
  const [kept, plan, recorded, near, inDoubt, standing] = await Promise.all([
    store.setup(),
    store.plan(),
    store.shownAlerts(),
    store.lotsByClose({ from, before }),
    store.lotsInDoubt(from, before),
    store.team(),
  ]);
  const lots = [...new Map([...near, ...inDoubt].map((lot) => [lot.id, lot])).values()];
  const setup = wholeSetup(kept, world.zone());
  const planned = plannedBids(plan?.plan);
  const team = teamWatch(standing, now);
  const clock = await seeClock(store, world, recorded, now);
  return {
    ...clock,
    ...(clock.lastSeen !== null && now - clock.lastSeen > AWAY && { awaySince: clock.lastSeen }),
    spoken: [...new Set([...recorded].flatMap(([key, at]) => (at > now - HOUR && clock.shown.has(key) ? [at] : [])))],
    lots: alertLots(lots, standingsUnder(setup, planned), clock.corrections, team?.me),
    team,
    deadlines: await deadlinesOf({ store, setup, now }, world.report),
    setup,
    people: peopleToHandTo(lots, setup.rush, team),
    signature: JSON.stringify([setup, team, plan?.plan.bids, lots.map(({ id, changedAt }) => [id, changedAt])]),
  };
}

/** What is due, and when to look again. */
export function planOf(sight: Sight, now: Instant): AlertPlan {
  const { lots, deadlines, setup, people, team, shown, again, corrections, spoken, awaySince } = sight;
  const plan = planAlerts({
    lots,
    deadlines,
    rules: setup.alerts,
    calendar: rushCalendar(setup.rush, setup.store.zone, setup.alerts.nearMinutes),
    zone: setup.store.zone,
    people,
    team,
    shownKeys: shown,
    awaySince,
    now,
  });
  const clock = sayClockChange(corrections, shown, now);
  const repeated = new Set(again);
  const due = plan.due.map((alert) =>
    alert.keys.some((key) => repeated.has(key))
      ? { ...alert, title: `Again, after the clock was put: ${alert.title}` }
      : alert,
  );
  const all = clock === null ? due : [...due, clock];
  const budget = withinBudget(all, spoken, setup.alerts.hourlyMost, now);
  const next = Math.min(plan.next ?? Number.POSITIVE_INFINITY, budget.next);
  return {
    ...plan,
    due: budget.due,
    next: Number.isFinite(next) ? instant(next) : null,
    ...(budget.held.length > 0 && { held: budget.held }),
  };
}
