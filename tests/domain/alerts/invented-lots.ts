import type { AlertBid, AlertLot } from '../../../src/domain/alerts/alert-lot.ts';
import { type PlanInput, planAlerts } from '../../../src/domain/alerts/plan-alerts.ts';
import { rushCalendar } from '../../../src/domain/rush/rush-bands.ts';
import { type AlertRules, alertRulesSchema } from '../../../src/domain/setup/alert-rules.ts';
import { rushSchema } from '../../../src/domain/setup/store.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../../src/domain/time/local-date.ts';
import { resolveWallTime } from '../../../src/domain/time/resolve-wall-time.ts';
import { type Zone, zone } from '../../../src/domain/time/zone.ts';

export const BOISE = zone('America/Boise');

/** The invented store's rush: Saturday from ten to one. */
export const RUSH = rushSchema.parse({ weekly: [{ weekday: 'sat', from: '10:00', to: '13:00' }] });

/** A moment by the clock of a place. */
export const clockAt = (date: string, time: string, place: Zone = BOISE): Instant =>
  resolveWallTime({ date: date as LocalDate, time: time as LocalTime }, place).earliest;

/** A bid that is in and stands, or none yet. */
const inventedBid = (placed: boolean): AlertBid => ({
  placed,
  loud: !placed,
  words: placed ? 'Placed $9,000.' : 'No proxy is placed yet.',
  offer: null,
  news: null,
});

/** A lot in another state than the usual; `placed` for a bid that is in and stands. */
export type Invention = Partial<AlertLot> & { readonly placed?: boolean };

export const inventedLot = (id: string, close: number, { placed = false, ...more }: Invention = {}): AlertLot => ({
  id,
  close: instant(close),
  name: `Car ${id}`,
  stop: 'Stop at $9,725.',
  bid: inventedBid(placed),
  ended: false,
  since: instant(0),
  ...more,
});

/** Calls an hour and a quarter of an hour before, and nothing else, unless the test says so. */
export const bareRules = (more: Partial<AlertRules> = {}): AlertRules => ({
  ...alertRulesSchema.parse({
    leadMinutes: [60, 15],
    placedLeadMinutes: [5],
    digestAt: null,
    beforeRushMinutes: null,
    afterCloseMinutes: null,
    nearMinutes: 30,
    reactionMinutes: 0,
  }),
  ...more,
});

/** The plan for the invented store, with what a test does not name as quiet as can be. */
export function planFor(
  lots: readonly AlertLot[],
  now: number,
  more: Partial<PlanInput> & { shown?: Iterable<string> } = {},
) {
  const rules = more.rules ?? bareRules();
  const place = more.zone ?? BOISE;
  return planAlerts({
    lots,
    deadlines: [],
    rules,
    calendar: rushCalendar(RUSH, place, rules.nearMinutes),
    zone: place,
    people: [],
    shownKeys: new Set(more.shown ?? []),
    now: instant(now),
    ...more,
  });
}
