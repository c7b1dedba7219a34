import { describe, expect, test } from 'vitest';
import { readCloseTime } from '../../../src/domain/close/read-close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { missedChange } from '../../../src/domain/time/zone-data.ts';

const hours = (text: string, venue?: string) => {
  const read = readCloseTime(text, {
    now: instant(Date.UTC(2026, 5, 1)),
    storeZone: zone('America/Boise'),
    ...(venue === undefined ? {} : { venueZone: zone(venue) }),
  });
  if (!read.ok) throw new Error(read.message);
  const readings = [read.value.instant, ...read.value.otherwise];
  return { hours: readings.map((at) => new Date(at).getUTCHours()), doubts: read.value.doubts };
};

const SUMMER = '2026-07-15 2:00 PM';
const WINTER = '2026-12-15 2:00 PM';

describe('zone words', () => {
  test.each([
    ['ET', 19],
    ['eastern', 19],
    ['Eastern Standard Time', 19],
    ['Eastern Standard', 19],
    ['E.S.T.', 19],
    ['(EST)', 19],
    ['CT', 20],
    ['CST', 20],
    ['Mountain Time', 21],
    ['MST', 21],
    ['PT', 22],
    ['AKST', 23],
    ['HST', 24],
    ['AST', 18],
    ['Phoenix', 21],
    ['AZ time', 21],
    ['Arizona (MST)', 21],
    ['Eastern (EST)', 19],
    ['El Paso', 21],
    ['America/Chicago', 20],
    ['GMT', 14],
    ['HNE', 19],
  ])('%s in winter means %i:00 UTC, without doubt', (words, utcHour) => {
    expect(hours(`${WINTER} ${words}`)).toEqual({ hours: [utcHour % 24], doubts: [] });
  });

  test.each(['EST', 'CST', 'PST', 'MST', 'AKST', 'Eastern Standard Time', 'HNE', 'HDT'])(
    '%s in July contradicts the date',
    (words) => {
      expect(hours(`${SUMMER} ${words}`).doubts).toEqual(['abbreviation']);
    },
  );

  test.each(['EDT', 'CDT', 'PDT', 'MDT', 'HAE'])('%s in December contradicts the date, in July it fits', (words) => {
    expect(hours(`${WINTER} ${words}`).doubts).toEqual(['abbreviation']);
    expect(hours(`${SUMMER} ${words}`).doubts).toEqual([]);
  });

  test('MST in summer is right for a venue in Phoenix and doubtful for one in Denver', () => {
    expect(hours(`${SUMMER} MST`, 'America/Phoenix')).toEqual({ hours: [21], doubts: [] });
    expect(hours(`${SUMMER} MST`, 'America/Denver').doubts).toEqual(['abbreviation']);
  });

  test('go before the venue, which only has its say where it keeps their winter time and another in summer', () => {
    expect(hours(`${SUMMER} ET`, 'America/Denver')).toEqual({ hours: [18], doubts: [] });
    expect(hours(`${WINTER} EST`, 'America/Los_Angeles')).toEqual({ hours: [19], doubts: [] });
    expect(hours(`${SUMMER} MT`, 'America/Phoenix').doubts).toEqual(['abbreviation']);
    expect(hours(`${SUMMER} CDT`, 'America/Mexico_City').doubts).toEqual(['abbreviation']);
    expect(hours(`${SUMMER} EST`, 'America/Cancun')).toEqual({ hours: [19], doubts: [] });
    expect(hours(`${WINTER} MT`, 'America/Phoenix').doubts).toEqual([]);
  });

  test('a state with two zones is asked, unless the venue says which', () => {
    expect(hours(`${WINTER} Tennessee time`)).toEqual({ hours: [19, 20], doubts: ['abbreviation'] });
    expect(hours(`${WINTER} Tennessee time`, 'America/Chicago')).toEqual({ hours: [20], doubts: [] });
    expect(hours(`${WINTER} ET (Phoenix)`)).toEqual({ hours: [19, 21], doubts: ['abbreviation'] });
  });

  test.each(['best', 'closet', 'the first lot', 'MDTX', 'estimate'])('is none in %j', (words) => {
    const read = readCloseTime(`${WINTER} ${words}`, { now: instant(0), storeZone: zone('America/Boise') });
    expect(read).toMatchObject({ ok: false, reason: expect.stringMatching(/not-understood|unknown-zone/) });
  });
});

describe('a close with zone letters', () => {
  test('"2:00 PM EST" in July is asked about: 14:00 by the clock or an hour later', () => {
    expect(hours('2026-07-15 2:00 PM EST')).toEqual({ hours: [18, 19], doubts: ['abbreviation'] });
    expect(hours('2026-07-15 2:00 PM EDT')).toEqual({ hours: [18], doubts: [] });
    expect(hours('2026-07-15 2:00 PM ET')).toEqual({ hours: [18], doubts: [] });
  });

  test('that contradict the date go by what they are and by what they may be meant for', () => {
    expect(hours('2026-07-15 2:00 PM PT', 'America/New_York')).toEqual({ hours: [21], doubts: [] });
    expect(hours('2026-07-15 2:00 PM PST', 'America/New_York')).toEqual({ hours: [21, 22], doubts: ['abbreviation'] });
  });

  test('in Arizona never moves (tz database: America/Phoenix is fixed)', () => {
    for (const month of ['01', '03', '07', '11'])
      expect(hours(`2027-${month}-15 2:00 PM Arizona time`)).toEqual({ hours: [21], doubts: [] });
  });
});

describe('places that stopped changing their clocks in November 2026 (tz database 2026b to 2026e)', () => {
  test.each([
    ['America/Vancouver', 17],
    ['America/Edmonton', 16],
    ['America/Inuvik', 16],
    ['America/Winnipeg', 15],
  ])(
    '%s at 10:00 in December 2026 is %i:00 UTC; with old rules here an hour later is offered and doubted',
    (place, utcHour) => {
      const old = missedChange(zone(place)) !== null;
      expect(hours('2026-12-15 10:00', place)).toEqual(
        old ? { hours: [utcHour, utcHour + 1], doubts: ['zone-data'] } : { hours: [utcHour], doubts: [] },
      );
    },
  );

  test('Morocco keeps UTC since September 20, 2026 (2026d): 10:00 is 10:00, with old rules also 9:00', () => {
    for (const place of ['Africa/Casablanca', 'Africa/El_Aaiun']) {
      const old = missedChange(zone(place)) !== null;
      expect(hours('2026-12-15 10:00', place)).toEqual(
        old ? { hours: [9, 10], doubts: ['zone-data'] } : { hours: [10], doubts: [] },
      );
      expect(hours('2026-08-15 10:00', place)).toEqual({ hours: [9], doubts: [] });
    }
  });

  test('were as they had been until then, and places beside them still are', () => {
    expect(hours('2026-10-15 10:00', 'America/Vancouver')).toEqual({ hours: [17], doubts: [] });
    expect(hours('2026-01-15 10:00', 'America/Vancouver')).toEqual({ hours: [18], doubts: [] });
    expect(hours('2026-12-15 10:00', 'America/Toronto')).toEqual({ hours: [15], doubts: [] });
    expect(hours('2026-12-15 10:00', 'America/Regina')).toEqual({ hours: [16], doubts: [] });
    expect(missedChange(zone('America/Toronto'))).toBeNull();
  });
});
