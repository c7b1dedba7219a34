import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readCloseTime } from '../../../src/domain/close/read-close-time.ts';
import { extendClose } from '../../../src/domain/time/close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { sayTime } from '../../../src/domain/time/say-time.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { wallClock } from '../../../src/domain/time/wall-clock.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const from = Date.UTC(2020, 0, 1) / MINUTE;
const to = Date.UTC(2036, 0, 1) / MINUTE;

/** Whole and half hours, a quarter of one, with and without daylight saving, both halves of the earth, both sides of the date line. */
const places = fc.constantFrom(
  ...[
    'UTC',
    'America/New_York',
    'America/Los_Angeles',
    'America/Phoenix',
    'America/Boise',
    'America/Indiana/Indianapolis',
    'America/St_Johns',
    'Pacific/Honolulu',
    'Europe/London',
    'Asia/Kolkata',
    'Asia/Kathmandu',
    'Australia/Lord_Howe',
    'Pacific/Apia',
  ].map(zone),
);
const minutes = fc.integer({ min: from, max: to });
/** Around the clock changes of the place too, where the trouble is. */
const moments = fc.oneof(
  minutes,
  fc
    .tuple(fc.integer({ min: 2020, max: 2035 }), fc.constantFrom(2, 3, 9, 10), fc.integer({ min: 0, max: 44_000 }))
    .map(([year, month, minute]) => Date.UTC(year, month, 1) / MINUTE + minute),
);

test('a close written as its zone’s clock shows it is read back to that moment, or in doubt with it among the readings', () => {
  fc.assert(
    fc.property(moments, places, places, (minute, venue, store) => {
      const close = instant(minute * MINUTE);
      const { date, time } = wallClock(close, venue);
      const read = readCloseTime(`${date} ${time}`, { now: close, storeZone: store, zone: venue });
      if (!read.ok) throw new Error(read.message);
      expect([read.value.instant, ...read.value.otherwise]).toContain(close);
      if (read.value.doubts.length === 0) expect(read.value.instant).toBe(close);
      // In doubt the earliest reading that is still ahead holds, so that a reminder comes early rather than late.
      else expect(read.value.instant).toBeLessThanOrEqual(close);
    }),
    { numRuns: 400 },
  );
});

test('a store that moves is shown the same moments on its new clock', () => {
  const close = instant(Date.UTC(2026, 10, 28, 19, 5));
  expect(
    [zone('America/Boise'), zone('America/Chicago'), zone('America/Phoenix')].map((at) => sayTime(close, at)),
  ).toEqual(['Sat Nov 28, 12:05 PM', 'Sat Nov 28, 1:05 PM', 'Sat Nov 28, 12:05 PM']);
});

test('time that a sale adds is time that passes, also through the hour that the clocks skip', () => {
  const read = readCloseTime('2027-03-14 01:58 MST', {
    now: instant(Date.UTC(2027, 2, 13)),
    storeZone: zone('America/Boise'),
  });
  if (!read.ok) throw new Error(read.message);
  const later = extendClose(read.value, 5);
  expect(later.instant - read.value.instant).toBe(5 * MINUTE);
  expect(sayTime(later.instant, zone('America/Boise'))).toBe('Sun Mar 14, 3:03 AM');
  expect(later.text).toBe('2027-03-14 01:58 MST');
});
