import { formatInTimeZone } from 'date-fns-tz/formatInTimeZone';
import { getTimezoneOffset } from 'date-fns-tz/getTimezoneOffset';
import { beforeAll, describe, expect, test } from 'vitest';
import { instant } from '../../src/domain/time/instant.ts';
import { DAY, HOUR, MINUTE } from '../../src/domain/time/units.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { zoneOffset } from '../../src/domain/time/zone-offset.ts';
import { type ClockChange, clockChanges, temporalOffset } from '../reference/clock-changes.ts';

/** One zone in so many, in each of the six time zones; all of them takes minutes: `EVERY_ZONE=1`. */
const ONE_IN = process.env.EVERY_ZONE === undefined ? 48 : 1;
const AT_HOME = ['America/Boise', 'America/New_York', 'America/Phoenix', 'America/St_Johns', 'Australia/Lord_Howe'];
const zones = Intl.supportedValuesOf('timeZone')
  .filter((name, i) => name.includes('/') && (i % ONE_IN === 0 || AT_HOME.includes(name)))
  .map(zone);

interface Change extends ClockChange {
  readonly before: number;
  readonly after: number;
}

/** All of them take their time. */
const PATIENCE_MS = 10 * MINUTE;
let changes: readonly Change[] = [];
beforeAll(() => {
  changes = zones
    .flatMap((place) => clockChanges(place, 2000, 2037))
    .map(({ at, zone: place }) => ({
      at,
      zone: place,
      before: temporalOffset(at - 1000, place),
      after: temporalOffset(at, place),
    }));
}, PATIENCE_MS);

describe(`the offsets of ${zones.length} zones, around every change of 2000 to 2037`, { timeout: PATIENCE_MS }, () => {
  test('has changes to look at', () => {
    expect(changes.length).toBeGreaterThan(40 * AT_HOME.length);
  });

  test('are those of Temporal and of Intl, to the second', () => {
    // Gathered: tens of thousands of expectations would take longer than what they look at.
    const unlike: object[] = [];
    for (const { zone: place, at } of changes) {
      const longOffset = new Intl.DateTimeFormat('en-US', { timeZone: place, timeZoneName: 'longOffset' });
      const byIntl = (moment: number): number => {
        const shown = longOffset.formatToParts(moment).find(({ type }) => type === 'timeZoneName')?.value ?? '';
        const [, sign = '+', hours = 0, minutes = 0, seconds = 0] =
          /^GMT([+-])?(\d+)?:?(\d+)?:?(\d+)?$/.exec(shown) ?? [];
        return (sign === '-' ? -1 : 1) * (Number(hours) * HOUR + Number(minutes) * MINUTE + Number(seconds) * 1000) + 0;
      };
      for (const around of [
        -3 * DAY,
        -26 * HOUR,
        -14 * HOUR,
        -HOUR,
        -1000,
        0,
        1000,
        HOUR,
        14 * HOUR,
        26 * HOUR,
        3 * DAY,
      ]) {
        const moment = at + around;
        const ours = zoneOffset(instant(moment), place);
        const [theirs, shown] = [temporalOffset(moment, place), byIntl(moment)];
        if (ours !== theirs || ours !== shown) unlike.push({ place, moment, ours, theirs, shown });
      }
    }
    expect(unlike).toEqual([]);
  });

  test('never change twice within six days, which the way they are found rests on', () => {
    for (const [i, change] of changes.entries()) {
      const next = changes[i + 1];
      if (next?.zone === change.zone) expect([change, next.at - change.at > 6 * DAY]).toEqual([change, true]);
    }
  });

  test('are date-fns-tz’s for every wall time that a clock shows once', () => {
    for (const { zone: place, at, before, after } of changes) {
      const [low, high] = [at + Math.min(before, after), at + Math.max(before, after)];
      for (const wall of [low - DAY, low - HOUR, low - 1000])
        expect([place, wall, getTimezoneOffset(place, new Date(wall))]).toEqual([place, wall, before]);
      for (const wall of [high, high + HOUR, high + DAY])
        expect([place, wall, getTimezoneOffset(place, new Date(wall))]).toEqual([place, wall, after]);
    }
  });

  test('are not date-fns-tz’s for a moment close to a change, so Intl is needed there, and are from 15 hours away on', () => {
    const right = ({ zone: place, at }: Change, around: number) =>
      getTimezoneOffset(place, new Date(at + around)) === temporalOffset(at + around, place);
    const [wrongNear, wrongFar] = [2, 15].map((hours) =>
      changes.filter((change) => !(right(change, -hours * HOUR) && right(change, hours * HOUR))),
    );
    expect(wrongNear?.length).toBeGreaterThan(changes.length / 2);
    expect(wrongFar).toEqual([]);
  });
});

test('date-fns-tz’s formatted times are an hour late where this machine skips an hour, so ours are our own', () => {
  const shown = formatInTimeZone(new Date('2026-03-08T09:30:00Z'), 'America/Phoenix', 'HH:mm');
  // 2:30 in Phoenix, which a clock in New York never shows on that night.
  expect(shown).toBe(
    process.env.TZ === 'America/New_York' || process.env.TZ === 'America/Los_Angeles' ? '03:30' : '02:30',
  );
});
