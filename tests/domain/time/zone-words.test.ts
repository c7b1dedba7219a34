import { describe, expect, test } from 'vitest';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { readCloseTime } from '../../../src/domain/time/read-close-time.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { offsetMissedByOldData } from '../../../src/domain/time/zone-data.ts';
import { findZoneWords, zoneFromWords } from '../../../src/domain/time/zone-words.ts';

const SUMMER = '2026-07-15' as LocalDate;
const WINTER = '2026-12-15' as LocalDate;
const said = (words: string, date: LocalDate, venue?: string) =>
  zoneFromWords(words, { date, ...(venue === undefined ? {} : { venueZone: zone(venue) }) });
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

describe('zone words', () => {
  test.each([
    ['ET', 'America/New_York'],
    ['eastern', 'America/New_York'],
    ['Eastern Standard Time', 'America/New_York'],
    ['(EST)', 'America/New_York'],
    ['CT', 'America/Chicago'],
    ['CST', 'America/Chicago'],
    ['Mountain Time', 'America/Denver'],
    ['MST', 'America/Denver'],
    ['PT', 'America/Los_Angeles'],
    ['AKST', 'America/Anchorage'],
    ['HST', 'Pacific/Honolulu'],
    ['AST', 'America/Halifax'],
    ['Phoenix', 'America/Phoenix'],
    ['Arizona time', 'America/Phoenix'],
    ['Arizona (MST)', 'America/Phoenix'],
    ['Eastern (EST)', 'America/New_York'],
    ['America/Chicago', 'America/Chicago'],
    ['GMT', 'UTC'],
  ])('%s in winter means %s, without doubt', (words, expected) => {
    expect(said(words, WINTER)).toEqual({ zone: expected, doubts: [] });
  });

  test.each(['EST', 'CST', 'PST', 'MST', 'AKST', 'Eastern Standard Time'])(
    '%s in July contradicts the date',
    (words) => {
      expect(said(words, SUMMER)?.doubts).toEqual(['abbreviation']);
    },
  );

  test.each(['EDT', 'CDT', 'PDT', 'MDT'])('%s in December contradicts the date, in July it fits', (words) => {
    expect(said(words, WINTER)?.doubts).toEqual(['abbreviation']);
    expect(said(words, SUMMER)?.doubts).toEqual([]);
  });

  test('MST in summer is right for a venue in Phoenix and doubtful for one in Denver', () => {
    expect(said('MST', SUMMER, 'America/Phoenix')).toEqual({ zone: 'America/Phoenix', doubts: [] });
    expect(said('MST', SUMMER, 'America/Denver')?.doubts).toEqual(['abbreviation']);
  });

  test('keep the venue’s own zone when its clock shows the same', () => {
    expect(said('ET', WINTER, 'America/Detroit')).toEqual({ zone: 'America/Detroit', doubts: [] });
    expect(said('MT', SUMMER, 'America/Boise')).toEqual({ zone: 'America/Boise', doubts: [] });
  });

  test('are doubtful when the venue’s clock shows another time', () => {
    expect(said('ET', SUMMER, 'America/Denver')?.doubts).toEqual(['abbreviation']);
    expect(said('MT', SUMMER, 'America/Phoenix')?.doubts).toEqual(['abbreviation']);
    expect(said('MT', WINTER, 'America/Phoenix')?.doubts).toEqual([]);
  });

  test('are none in ordinary words, and several where two differ', () => {
    for (const text of ['Sat at 2', 'best', 'closet', 'the first lot', 'MDTX', 'estimate'])
      expect(findZoneWords(text)).toBeNull();
    expect(findZoneWords('2 PM ET / 11 AM PT')).toBe('several');
    expect(zoneFromWords('ET PT', { date: SUMMER })).toBeNull();
  });
});

describe('a close with zone letters', () => {
  test('"2:00 PM EST" in July is asked about: 14:00 by the clock or an hour later', () => {
    expect(hours('2026-07-15 2:00 PM EST')).toEqual({ hours: [18, 19], doubts: ['abbreviation'] });
    expect(hours('2026-07-15 2:00 PM EDT')).toEqual({ hours: [18], doubts: [] });
    expect(hours('2026-07-15 2:00 PM ET')).toEqual({ hours: [18], doubts: [] });
  });

  test('that contradict the venue goes by the earliest of the readings', () => {
    expect(hours('2026-07-15 2:00 PM PT', 'America/New_York')).toEqual({ hours: [18, 21], doubts: ['abbreviation'] });
    expect(hours('2026-07-15 2:00 PM PST', 'America/New_York')).toEqual({
      hours: [18, 21, 22],
      doubts: ['abbreviation'],
    });
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
      const old = offsetMissedByOldData(zone(place)) !== null;
      expect(hours('2026-12-15 10:00', place)).toEqual(
        old ? { hours: [utcHour, utcHour + 1], doubts: ['zone-data'] } : { hours: [utcHour], doubts: [] },
      );
    },
  );

  test('were as they had been until then, and places beside them still are', () => {
    expect(hours('2026-10-15 10:00', 'America/Vancouver')).toEqual({ hours: [17], doubts: [] });
    expect(hours('2026-01-15 10:00', 'America/Vancouver')).toEqual({ hours: [18], doubts: [] });
    expect(hours('2026-12-15 10:00', 'America/Toronto')).toEqual({ hours: [15], doubts: [] });
    expect(hours('2026-12-15 10:00', 'America/Regina')).toEqual({ hours: [16], doubts: [] });
    expect(offsetMissedByOldData(zone('America/Toronto'))).toBeNull();
  });
});
