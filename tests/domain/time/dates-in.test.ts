import fc from 'fast-check';
import { expect, test } from 'vitest';
import { datesIn } from '../../../src/domain/time/dates-in.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const ZONES = [
  'America/Boise',
  'America/Phoenix',
  'America/New_York',
  'Australia/Lord_Howe',
  'Asia/Kathmandu',
  'Pacific/Apia',
];

test.each(ZONES)('the date in %s is the one that is asked for each time, clock changes included', (name) => {
  const where = zone(name);
  const dates = datesIn(where);
  const anywhere = fc.integer({ min: Date.UTC(2020, 0), max: Date.UTC(2030, 0) });
  fc.assert(
    fc.property(anywhere, (at) => {
      expect(dates(instant(at))).toBe(dateIn(where, instant(at)));
    }),
    { numRuns: 200 },
  );
  // Around the changes of 2026 in the United States, a quarter of an hour apart.
  for (const change of [Date.UTC(2026, 2, 8, 9), Date.UTC(2026, 10, 1, 8)])
    for (let i = -100; i <= 100; i++) {
      const at = instant(change + i * 900_000);
      expect(dates(at)).toBe(dateIn(where, at));
    }
});
