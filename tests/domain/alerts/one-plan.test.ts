import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { AlertLot } from '../../../src/domain/alerts/alert-lot.ts';
import { CROWDED_MINUTES, GATHERED_MINUTES } from '../../../src/domain/alerts/gather.ts';
import { callsOfLot } from '../../../src/domain/alerts/lot-calls.ts';
import { momentsAhead, planOfLots } from '../../../src/domain/alerts/lot-plan.ts';
import { closingEvent } from '../../../src/domain/calendar/closing-event.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { rushCalendar } from '../../../src/domain/rush/rush-bands.ts';
import type { AlertRules } from '../../../src/domain/setup/alert-rules.ts';
import { storeSchema } from '../../../src/domain/setup/store.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import type { LocalTime } from '../../../src/domain/time/local-date.ts';
import { HOUR, MINUTE } from '../../../src/domain/time/units.ts';
import { BOISE, bareRules, clockAt, inventedLot, planFor, RUSH } from './invented-lots.ts';

const NOON = clockAt('2026-11-28', '12:00');

const minutes = (most: number) => fc.integer({ min: 1, max: most });
const leads = (least: number) =>
  fc.uniqueArray(minutes(240), { minLength: least, maxLength: 4 }).map((list) => list.sort((a, b) => b - a));
const sometimes = <Value>(arbitrary: fc.Arbitrary<Value>) => fc.option(arbitrary, { nil: undefined, freq: 3 });

/** A Saturday's lot in any state that its user can bring it into. */
const lot = fc
  .record({
    minute: fc.integer({ min: -240, max: 240 }),
    placed: fc.boolean(),
    ended: fc.boolean(),
    done: fc.boolean(),
    handedTo: sometimes(fc.constant('The closer')),
    putOff: sometimes(fc.integer({ min: -90 * MINUTE, max: -1 })),
    extended: sometimes(fc.integer({ min: -90 * MINUTE, max: -1 })),
    ownLeads: sometimes(leads(0)),
    sinceHours: fc.integer({ min: -72, max: -1 }),
  })
  .map(({ minute, putOff, extended, sinceHours, ...more }) => {
    const close = NOON + minute * MINUTE;
    return (id: string) =>
      inventedLot(id, close, {
        ...more,
        since: instant(close + sinceHours * HOUR),
        ...(putOff !== undefined && { putOffUntil: instant(close + putOff) }),
        ...(extended !== undefined && { extendedAt: instant(close + extended) }),
      });
  });
const lots = fc.array(lot, { minLength: 1, maxLength: 12 }).map((list) => list.map((make, i) => make(`lot${i}`)));

const rules: fc.Arbitrary<AlertRules> = fc
  .record({
    leadMinutes: leads(1),
    placedLeadMinutes: leads(0),
    digestAt: fc.option(fc.constantFrom('00:00', '17:30', '19:00', '23:59')),
    beforeRushMinutes: fc.option(minutes(24 * 60)),
    afterCloseMinutes: fc.option(minutes(60)),
    nearMinutes: fc.constantFrom(0, 30, 240),
    reactionMinutes: fc.constantFrom(0, 3, 20),
  })
  .map(({ digestAt, ...more }) => bareRules({ ...more, digestAt: digestAt as LocalTime | null }));

/** What the background says from then on, each time it is woken when it asked to be: by key, when. */
function said(from: Instant, given: readonly AlertLot[], by: AlertRules): Map<string, number> {
  const shown = new Map<string, number>();
  for (let now: Instant | null = from; now !== null; ) {
    const { due, next } = planFor(given, now, { rules: by, shown: shown.keys() });
    for (const key of due.flatMap(({ keys }) => keys)) if (!shown.has(key)) shown.set(key, now);
    now = next;
  }
  return shown;
}

const rushUnder = (by: AlertRules) => ({ rules: by, calendar: rushCalendar(RUSH, BOISE, by.nearMinutes), zone: BOISE });
const anyHour = fc.integer({ min: -50, max: 3 }).map((hours) => instant(NOON + hours * HOUR));

test('what week and worksheet show as planned is what the background says, neither more nor less, each at its time', () => {
  fc.assert(
    fc.property(lots, rules, anyHour, (given, by, from) => {
      const ahead = planOfLots(given, rushUnder(by), new Map()).filter(({ dueAt }) => dueAt > from);
      const spoken = said(from, given, by);
      for (const { key, dueAt } of ahead) {
        const at = spoken.get(key) ?? Number.NaN;
        // What follows soon is told along with what is due, and a crowd begins so much earlier.
        expect(at, key).toBeLessThanOrEqual(dueAt);
        expect(at, key).toBeGreaterThanOrEqual(dueAt - (GATHERED_MINUTES + CROWDED_MINUTES) * MINUTE);
      }
      const late = [...spoken].filter(([key, at]) => at > from && !ahead.some((call) => call.key === key));
      expect(late).toEqual([]);
      expect(momentsAhead(given, rushUnder(by), new Set(), from)).toEqual(new Set(ahead.map(({ dueAt }) => dueAt)));
    }),
    { numRuns: 120 },
  );
});

test('what is planned is read from the first to the last, however the lots stand and whatever was said', () => {
  fc.assert(
    fc.property(lots, rules, (given, by) => {
      const times = planOfLots(given, rushUnder(by), new Map()).map(({ dueAt }) => dueAt);
      expect(times).toEqual(times.toSorted((a, b) => a - b));
    }),
  );
  const by = bareRules();
  const calls = planOfLots([inventedLot('b', NOON + HOUR), inventedLot('a', NOON)], rushUnder(by), new Map());
  expect(calls.map(({ dueAt }) => (dueAt - NOON) / MINUTE)).toEqual([-60, -15, 0, 45]);
});

test('the worksheets of all lots together plan what the week plans, and what was said is no longer ahead', () => {
  fc.assert(
    fc.property(lots, rules, anyHour, (given, by, from) => {
      const rush = rushUnder(by);
      const together = planOfLots(given, rush, new Map());
      const one = new Map(given.flatMap((each) => planOfLots([each], rush, new Map())).map((call) => [call.key, call]));
      expect(new Map(together.map((call) => [call.key, call]))).toEqual(one);
      expect(momentsAhead(given, rush, one, from).size).toBe(0);
    }),
  );
});

test('a calendar rings once for a lot, at the last call before each moment that its close can mean', () => {
  const store = storeSchema.parse({ name: 'Cottonwood Truck & Van', zone: BOISE });
  fc.assert(
    fc.property(lots, rules, (given, by) => {
      for (const watched of given) {
        const event = closingEvent(
          {
            id: watched.id as LotId,
            facts: {},
            at: watched.close,
            stop: 'No max bid yet',
            watched,
            revision: { count: 1, at: instant(0) },
          },
          store,
          by,
        );
        const calls = callsOfLot(watched, { ...by, placedLeadMinutes: [] }, rushUnder(by).calendar);
        expect(event.alarms.map(({ at }) => at)).toEqual(calls.filter(({ last }) => last).map(({ dueAt }) => dueAt));
        expect(event.alarms.length).toBeLessThanOrEqual(1);
      }
    }),
  );
});
