import { describe, expect, test } from 'vitest';
import type { CloseKnown } from '../../../src/domain/close/close-known.ts';
import { readCloseTime } from '../../../src/domain/close/read-close-time.ts';
import { closeTimeSchema } from '../../../src/domain/time/close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const DENVER = zone('America/Denver');
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

describe('what could be understood in two ways is asked', () => {
  test.each([
    ['Sat 2:05', 'half-day', 2],
    ['11/28/2026 2:05', 'half-day', 2],
    ['Nov 28 12:00', 'half-day', 2],
    ['Sat midnight', 'midnight', 2],
    ['2026-11-28 00:00', 'midnight', 2],
    ['next Friday 10am', 'which-day', 2],
    ['Nov 28 1 PM - 3 PM', 'range', 2],
    ['Nov 27 - Nov 28 3 PM', 'range', 2],
    ['Nov 28 about 3 PM', 'approximate', 1],
    ['Nov 28 13:05 AM', 'half-day', 2],
    ['Closed Nov 30 2026 2 PM', 'closed-ahead', 1],
    ['Satuday 2 PM', 'spelling', 1],
    ['14h30', 'countdown', 2],
  ] as const)('%j for %s', (text, doubt, readings) => {
    const read = close(text, { venueZone: DENVER });
    expect(read.doubts).toEqual([doubt]);
    expect(1 + read.otherwise.length).toBe(readings);
  });

  test('the earliest reading that is still ahead holds meanwhile', () => {
    const { instant: holds, otherwise } = close('02/12/2026 4:30 PM ET');
    expect([holds, ...otherwise].map(utc)).toEqual(['2026-12-02T21:30:00', '2026-02-12T21:30:00']);
  });

  test('two figures are an hour of 24 where a machine wrote them, and in the night only with an offset', () => {
    expect(at('2026-11-28 09:30', { venueZone: DENVER })).toBe('2026-11-28T16:30:00');
    expect(asked('2026-11-28 02:30').doubts).toContain('half-day');
    expect(at('2026-11-28T02:30:00', { venueZone: DENVER })).toBe('2026-11-28T09:30:00');
    expect(at('Nov 28 09:00 UTC')).toBe('2026-11-28T09:00:00');
  });
});

describe('what nobody can read', () => {
  test.each([
    ['', 'empty'],
    ['Sat', 'no-time'],
    ['tonight', 'no-time'],
    ['2026-11-28', 'no-time'],
    ['lot 4 closes Sat 2pm', 'not-understood'],
    ['sometime 3pm', 'not-understood'],
    ['Office hours Mon-Fri 9-5', 'not-understood'],
    ['Opens Nov 28 10 AM', 'opens'],
    ['25:00', 'not-a-time'],
    ['Nov 28 2:65 PM', 'not-a-time'],
    ['11/28/1926 2:05 PM', 'no-such-date'],
    [`Sat 2pm ${'.'.repeat(200)}`, 'too-long'],
  ])('%j is refused as %s, with a sentence that says what to do', (text, expected) => {
    expect(reason(text)).toBe(expected);
    const read = outcome(text);
    expect(!read.ok && read.message).toMatch(/[.?]$/);
  });

  test('a day without its hour is asked for the hour by its name', () => {
    const read = outcome('closes the 28th');
    expect(!read.ok && read.message).toBe('At what time does it close on Sat Nov 28? Add it, such as 2:05 PM.');
  });
});
