import { DateTime } from 'luxon';
import { Temporal } from 'temporal-polyfill';
import { beforeAll, describe, expect, test } from 'vitest';
import { startOfDay } from '../../src/domain/time/calendar-day.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { asIfUtc, resolveWallTime, type WallTime } from '../../src/domain/time/resolve-wall-time.ts';
import { wallClock } from '../../src/domain/time/wall-clock.ts';
import { type Zone, zone } from '../../src/domain/time/zone.ts';
import { zoneOffset } from '../../src/domain/time/zone-offset.ts';
import { type ClockChange, clockChanges } from './clock-changes.ts';

// Judges: Temporal (the ECMAScript proposal, by its polyfill) and luxon, both over the IANA time zone database.
const zones = Intl.supportedValuesOf('timeZone')
  .filter((name) => name.includes('/'))
  .map(zone);

/** What clocks show shortly before and after a change, by the old and by the new offset. */
function wallsAround({ at, zone: place }: ClockChange): WallTime[] {
  const offsets = [zoneOffset(instant(at - 1000), place), zoneOffset(at, place)];
  return offsets.flatMap((offset) =>
    [-90, -1, 0, 29, 90].map((minutes) => {
      const text = new Date(at + offset + minutes * 60_000).toISOString();
      return { date: text.slice(0, 10), time: text.slice(11, 16), second: 0 } as WallTime;
    }),
  );
}

function byTemporal(wall: WallTime, place: Zone) {
  const plain = Temporal.PlainDateTime.from(`${wall.date}T${wall.time}`);
  const as = (disambiguation: 'earlier' | 'later') => plain.toZonedDateTime(place, { disambiguation });
  const [earlier, later] = [as('earlier'), as('later')];
  const exists = earlier.toPlainDateTime().equals(plain);
  const [earliest, latest] = [earlier.epochMilliseconds, later.epochMilliseconds];
  return { kind: earliest === latest ? 'unique' : exists ? 'overlap' : 'gap', earliest, latest };
}

describe('every zone this runtime knows, around every change of 2015 to 2035', () => {
  let changes: ClockChange[] = [];
  beforeAll(() => {
    changes = zones.flatMap((place) => clockChanges(place, 2015, 2035));
  });

  test('has changes to check', () => {
    expect(zones.length).toBeGreaterThan(380);
    expect(changes.length).toBeGreaterThan(3500);
  });

  test('resolves wall times as Temporal does, gap and overlap included', () => {
    const kinds = new Set<string>();
    // Gathered: tens of thousands of expectations would take longer than what they look at.
    const unlike: object[] = [];
    for (const change of changes.filter((_, i) => i % 3 === 0))
      for (const wall of wallsAround(change)) {
        const ours = resolveWallTime(wall, change.zone);
        const theirs = byTemporal(wall, change.zone);
        kinds.add(ours.kind);
        if (theirs.kind !== ours.kind || theirs.earliest !== ours.earliest || theirs.latest !== ours.latest)
          unlike.push({ ...wall, zone: change.zone, ours, theirs });
      }
    expect(unlike).toEqual([]);
    expect([...kinds].sort()).toEqual(['gap', 'overlap', 'unique']);
  });

  test('resolves wall times to the moments that luxon calls possible', () => {
    let [compared, misread] = [0, 0];
    for (const change of changes.filter((_, i) => i % 11 === 0))
      for (const wall of wallsAround(change)) {
        const ours = resolveWallTime(wall, change.zone);
        if (ours.kind === 'gap') continue;
        compared += 1;
        const written = `${wall.date}T${wall.time}`;
        const readsBack = (at: DateTime) => at.toFormat("yyyy-MM-dd'T'HH:mm") === written;
        const theirs = DateTime.fromISO(written, { zone: change.zone });
        // Around changes at midnight luxon reads some wall times as others (Ittoqqortoormiit, 2020-03-28 23:59).
        if (!readsBack(theirs)) misread += 1;
        else {
          const possible = theirs.getPossibleOffsets().filter(readsBack);
          expect([...new Set([ours.earliest, ours.latest])]).toEqual(possible.map((at) => at.toMillis()).sort());
        }
      }
    expect(misread).toBeLessThan(compared / 100);
  });

  test('reads every clock back to where it came from', () => {
    const unlike: object[] = [];
    for (const change of changes)
      for (const around of [-3_600_000, -1000, 0, 1_800_000]) {
        const at = instant(change.at + around);
        const wall = wallClock(at, change.zone);
        const { earliest, latest } = resolveWallTime(wall, change.zone);
        const isBack = at === earliest || at === latest;
        if (!isBack || earliest + zoneOffset(earliest, change.zone) !== asIfUtc(wall))
          unlike.push({ zone: change.zone, at, earliest, latest });
      }
    expect(unlike).toEqual([]);
  });

  test('begins its days when Temporal does, where a change skips midnight too', () => {
    for (const change of changes.filter((_, i) => i % 5 === 0)) {
      const { date } = wallClock(change.at, change.zone);
      const theirs = Temporal.PlainDate.from(date).toZonedDateTime({ timeZone: change.zone }).epochMilliseconds;
      expect([change.zone, date, startOfDay(date, change.zone)]).toEqual([change.zone, date, theirs]);
    }
  });
});
