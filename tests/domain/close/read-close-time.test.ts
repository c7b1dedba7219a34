import { describe, expect, test } from 'vitest';
import type { CloseKnown } from '../../../src/domain/close/close-known.ts';
import { readCloseTime } from '../../../src/domain/close/read-close-time.ts';
import { closeTimeSchema, pickCloseTime } from '../../../src/domain/time/close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const DENVER = zone('America/Denver');
const PHOENIX = zone('America/Phoenix');
const NEW_YORK = zone('America/New_York');
/** Wednesday, 9:30 in the morning in Denver. */
const NOW = instant(Date.UTC(2026, 10, 25, 16, 30));

const outcome = (text: string, known: Partial<CloseKnown> = {}) =>
  readCloseTime(text, { now: NOW, storeZone: DENVER, ...known });
const close = (text: string, known: Partial<CloseKnown> = {}) => {
  const read = outcome(text, known);
  if (!read.ok) throw new Error(`${text}: ${read.message}`);
  expect(closeTimeSchema.safeParse(read.value).success).toBe(true);
  return read.value;
};
const utc = (at: number) => new Date(at).toISOString().slice(0, 19).replace(':00.', '');
const at = (text: string, known?: Partial<CloseKnown>) => utc(close(text, known).instant);
const reason = (text: string, known?: Partial<CloseKnown>) => {
  const read = outcome(text, known);
  return read.ok ? `read as ${utc(read.value.instant)}` : read.reason;
};
/** All that it can mean, the earliest first, and why. */
const asked = (text: string, known?: Partial<CloseKnown>) => {
  const { instant: holds, otherwise, doubts } = close(text, known);
  return { doubts, readings: [holds, ...otherwise].sort((a, b) => a - b).map(utc) };
};

describe('zones abroad', () => {
  test.each([
    ['Sat 28 Nov 2026, 4:30 pm ACDT', '2026-11-28T06:00:00'],
    ['28.11.2026 19:15 MEZ', '2026-11-28T18:15:00'],
    ['2026-12-05 2:00 pm NZDT', '2026-12-05T01:00:00'],
    ['Jul 5 2026 14:00 BST', '2026-07-05T13:00:00'],
    ['Nov 28 2:00 PM JST', '2026-11-28T05:00:00'],
  ])('reads %j by its own letters', (text, expected) => {
    expect(at(text)).toBe(expected);
  });

  test.each(['29 Nov 2026, 7:45 PM IST', 'Nov 28 2:00 PM BRT', 'Nov 28 2026 7:00 PM SGT', 'Nov 28 2:00 PM CAT'])(
    'never reads %j in the store’s zone as if the letters were not there',
    (text) => {
      expect(reason(text)).toBe('unknown-zone');
    },
  );
});

describe('a close with its day', () => {
  test.each([
    '2026-11-28 14:05',
    '2026-11-28T14:05',
    '2026-11-28T14:05:00',
    '2026/11/28 14:05',
    '20261128T140500',
    '11/28/2026 2:05 PM',
    '11/28/2026 14:05:00',
    '11/28/26 2:05p',
    '11-28-2026 2:05 PM',
    '28.11.2026 14:05',
    '28/11/2026 14:05',
    '11/28 2:05pm',
    'Sat 2:05pm',
    'this Saturday 2:05 P.M.',
    '2:05 PM Saturday',
    'Sat 28 Nov 2:05 PM',
    'Saturday, November 28, 2026 at 2:05 PM',
    '28 Nov 2026 14:05',
    '28-Nov-26 14:05',
    'Nov. 28th, 2026 @ 2:05 PM',
    'Closes Sat, Nov 28 · 2:05\u202fPM',
    'Closing: 11/28/2026 14:05',
    'in 3 days 2:05 pm',
    '46354.5868055556',
  ])('reads %j in the store’s zone when nothing names one, and says so', (text) => {
    expect(close(text)).toMatchObject({ how: 'store-zone', doubts: ['no-zone'], zone: DENVER, otherwise: [] });
    expect(at(text)).toBe('2026-11-28T21:05:00');
  });

  test('asks for the order of day and month where both can be, and where the column knows it, does not', () => {
    expect(asked('03/04/2027 10:00 UTC')).toEqual({
      doubts: ['day-order'],
      readings: ['2027-03-04T10:00:00', '2027-04-03T10:00:00'],
    });
    expect(asked('03/04/2027 10:00 UTC', { column: { order: 'day-first' } })).toEqual({
      doubts: [],
      readings: ['2027-04-03T10:00:00'],
    });
    expect(at('13/04/2027 10:00 UTC')).toBe('2027-04-13T10:00:00');
    expect(at('12/12/2026 10:00 UTC')).toBe('2026-12-12T10:00:00');
    expect(reason('13/14/2027 10:00')).toBe('no-such-date');
  });

  test('without a year is the one to come; one that is just past, or most of a year ahead, is asked', () => {
    expect(asked('Nov 10 2:05 PM UTC').readings).toEqual(['2026-11-10T14:05:00', '2027-11-10T14:05:00']);
    expect(asked('Oct 10 2:05 PM UTC').doubts).toEqual(['which-day']);
    expect(at('1/15 2:05 PM UTC')).toBe('2027-01-15T14:05:00');
  });

  test('refuses days that are not in the calendar, and asks where the weekday is another', () => {
    expect(reason('02/29/2027 10:00')).toBe('no-such-date');
    expect(asked('Friday, November 28, 2026 2:05 PM UTC')).toEqual({
      doubts: ['weekday'],
      readings: ['2026-11-27T14:05:00', '2026-11-28T14:05:00'],
    });
    expect(asked('Sat or Sun 10am UTC').readings).toEqual(['2026-11-28T10:00:00', '2026-11-29T10:00:00']);
    expect(asked('tomorrow, Nov 28, 2 PM UTC').doubts).toEqual(['two-clocks']);
  });
});

describe('a close without its day', () => {
  test('is the next time the clock shows it; where it is just past, that is asked', () => {
    expect(at('10:00 AM')).toBe('2026-11-25T17:00:00');
    expect(asked('9:29 AM', { venueZone: DENVER })).toEqual({
      doubts: ['which-day'],
      readings: ['2026-11-25T16:29:00', '2026-11-26T16:29:00'],
    });
    expect(at('9:30 AM')).toBe('2026-11-25T16:30:00');
    expect(asked('Wed 9:00 AM').readings).toEqual(['2026-11-25T16:00:00', '2026-12-02T16:00:00']);
    expect(at('Wed 10:00 AM')).toBe('2026-11-25T17:00:00');
    expect(at('noon')).toBe('2026-11-25T19:00:00');
    expect(at('00:15')).toBe('2026-11-26T07:15:00');
  });

  test('goes by the clock of the zone it is said in, not by the store’s', () => {
    // 9:45 is past in New York (it is 11:30 there) and still to come in Denver.
    expect(at('9:45 AM ET')).toBe('2026-11-26T14:45:00');
    expect(at('9:45 AM', { venueZone: NEW_YORK })).toBe('2026-11-26T14:45:00');
    expect(at('9:45 AM -0500')).toBe('2026-11-26T14:45:00');
    expect(at('9:45 AM')).toBe('2026-11-25T16:45:00');
    // A Wednesday evening in Denver is already Thursday in UTC.
    const evening = instant(Date.UTC(2026, 10, 26, 3, 0));
    expect(at('today 11 PM', { now: evening })).toBe('2026-11-26T06:00:00');
    expect(at('today 11 PM UTC', { now: evening })).toBe('2026-11-26T23:00:00');
  });

  test('may be named by today', () => {
    expect(at('today 5pm')).toBe('2026-11-26T00:00:00');
    expect(at('tomorrow 3pm')).toBe('2026-11-26T22:00:00');
    expect(at('noon tomorrow')).toBe('2026-11-26T19:00:00');
    expect(at('day after tomorrow 9am')).toBe('2026-11-27T16:00:00');
    expect(at('today 9am')).toBe('2026-11-25T16:00:00');
  });
});

describe('a countdown and a timestamp', () => {
  test.each([
    ['2h 13m', 133 * 60],
    ['2h13m', 133 * 60],
    ['in 2 hours 13 minutes', 133 * 60],
    ['Closes in 1 day, 4 hours', 28 * 3600],
    ['1d 02:13:05', 86_400 + 2 * 3600 + 13 * 60 + 5],
    ['02:13:05 left', 2 * 3600 + 13 * 60 + 5],
    ['45 min remaining', 45 * 60],
    ['90s', 90],
    ['2 days', 2 * 86_400],
  ])('%j counts from now', (text, seconds) => {
    expect(close(text)).toMatchObject({ instant: NOW + seconds * 1000, how: 'countdown', doubts: [], text });
  });

  test('an hour with minutes and seconds that stands alone can be time left and a time of day', () => {
    expect(asked('14:13:05', { venueZone: DENVER })).toEqual({
      doubts: ['countdown'],
      readings: ['2026-11-25T21:13:05', '2026-11-26T06:43:05'],
    });
    expect(close('14:13:05', { column: { countsDown: 'by its words' } }).doubts).toEqual([]);
  });

  test.each([
    ['3 days left', 'day'],
    ['2d 4h', 'hour'],
    ['2d 4h 13m', undefined],
    ['00:45:12 left', undefined],
  ])('%j is told no more finely than it was', (text, finest) => {
    expect(close(text).finest).toBe(finest);
  });

  test.each([
    ['2026-11-28T14:05:00Z', '2026-11-28T14:05:00'],
    ['2026-11-28T14:05Z', '2026-11-28T14:05:00'],
    ['20261128T140500Z', '2026-11-28T14:05:00'],
    ['2026-11-28T14:05:00.250-05:00', '2026-11-28T19:05:00'],
    ['2026-11-28 14:05 -0500', '2026-11-28T19:05:00'],
    ['2026-11-28 2:05 PM GMT-7', '2026-11-28T21:05:00'],
    ['2026-11-28 14:05 UTC+5:30', '2026-11-28T08:35:00'],
    ['Sat, 28 Nov 2026 14:05:00 -0500', '2026-11-28T19:05:00'],
    ['Sat Nov 28 2026 14:05:00 GMT-0500 (Eastern Standard Time)', '2026-11-28T19:05:00'],
    ['1795881900', '2026-11-28T16:05:00'],
    ['closes_at=1795881900', '2026-11-28T16:05:00'],
    ['1795881900000', '2026-11-28T16:05:00'],
  ])('%j leaves no doubt', (text, expected) => {
    expect(at(text)).toBe(expected);
    expect(close(text)).toMatchObject({ how: 'stated-offset', doubts: [], otherwise: [] });
  });

  test('a spreadsheet’s day number without a fraction has no time of day', () => {
    expect(reason('46354')).toBe('no-time');
    expect(reason('123456')).toBe('not-understood');
    expect(reason('99999999')).not.toMatch(/^read/);
  });
});

describe('the zone of a close', () => {
  test('is the one in the words, else the one beside them, else the venue’s, else the store’s', () => {
    const known = { zone: PHOENIX, venueZone: zone('America/Chicago') };
    expect(close('2026-11-28 14:05 ET')).toMatchObject({ zone: NEW_YORK, how: 'stated-zone', doubts: [] });
    expect(close('2026-11-28 14:05', known)).toMatchObject({ zone: PHOENIX, how: 'stated-zone', doubts: [] });
    expect(close('2026-11-28 14:05', { venueZone: NEW_YORK })).toMatchObject({ zone: NEW_YORK, how: 'venue-zone' });
    expect(close('2026-11-28 14:05 local time', { venueZone: NEW_YORK })).toMatchObject({
      zone: NEW_YORK,
      how: 'venue-zone',
      doubts: [],
    });
    expect(close('2026-11-28 14:05 America/Chicago', { venueZone: NEW_YORK })).toMatchObject({
      zone: 'America/Chicago',
      doubts: [],
    });
  });

  test('in a gap is doubtful and goes by the earlier reading', () => {
    const read = close('2026-03-08 2:30 AM ET');
    expect([read.doubts, utc(read.instant), read.otherwise.map(utc)]).toEqual([
      ['gap'],
      '2026-03-08T06:30:00',
      ['2026-03-08T07:30:00'],
    ]);
  });

  test('in an overlap is doubtful and goes by the earlier reading, unless the letters settle it', () => {
    const read = close('2026-11-01 1:30 AM ET');
    expect([read.doubts, utc(read.instant), read.otherwise.map(utc)]).toEqual([
      ['overlap'],
      '2026-11-01T05:30:00',
      ['2026-11-01T06:30:00'],
    ]);
    expect(close('2026-11-01 01:30 AM EST')).toMatchObject({ instant: Date.UTC(2026, 10, 1, 6, 30), doubts: [] });
    expect(close('2026-11-01 01:30 AM EDT')).toMatchObject({ instant: Date.UTC(2026, 10, 1, 5, 30), doubts: [] });
  });

  test('may be two, which agree or are asked', () => {
    expect(asked('2:05 PM ET (12:05 PM MT)')).toEqual({ doubts: [], readings: ['2026-11-25T19:05:00'] });
    expect(asked('2:05 PM ET (11:05 AM MT)')).toEqual({
      doubts: ['two-clocks'],
      readings: ['2026-11-25T18:05:00', '2026-11-25T19:05:00'],
    });
    expect(asked('2:05 PM ET/PT').doubts).toEqual(['abbreviation']);
  });
});

test('picking one of the readings settles the close', () => {
  const read = close('2026-11-01 1:30 AM ET');
  const [later] = read.otherwise;
  if (later === undefined) throw new Error('no other reading');
  expect(pickCloseTime(read, later)).toEqual({
    ...read,
    instant: later,
    how: 'picked',
    doubts: [],
    otherwise: [],
  });
});
