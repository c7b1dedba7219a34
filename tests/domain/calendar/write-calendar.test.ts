import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CalendarEvent } from '../../../src/domain/calendar/calendar-event.ts';
import { writeCalendar } from '../../../src/domain/calendar/write-calendar.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { readCalendar } from './read-calendar.ts';

const AT = instant(Date.UTC(2026, 10, 28, 19, 5));

const event: CalendarEvent = {
  uid: 'headroom-lot-01K9AAAAAAAAAAAAAAAAAAAAAA',
  sequence: 3,
  revisedAt: instant(Date.UTC(2026, 10, 25, 8)),
  at: AT,
  summary: 'Stop at $14,350 · 2021 Larkspur Hauler 20; crew cab',
  description: 'First line\nSecond, with a \\ in it',
  location: 'Saltmarsh Dealer Sale, gate 2',
  url: 'https://saltmarsh.example/lot/236?day=28',
  status: 'CONFIRMED',
  alarms: [
    { at: instant(AT - 3_600_000), words: 'It closes in 1 h.' },
    { at: instant(AT - 270_500), words: 'It closes in 4 min.' },
  ],
};

test('another reader gets every part of an event back', () => {
  expect(readCalendar(writeCalendar([event]))).toEqual([
    {
      uid: event.uid,
      sequence: 3,
      stamp: event.revisedAt,
      at: AT,
      summary: event.summary,
      description: event.description,
      location: event.location,
      url: event.url,
      status: 'CONFIRMED',
      alarms: [
        [-3600, 'It closes in 1 h.'],
        [-271, 'It closes in 4 min.'],
      ],
    },
  ]);
});

test('an address that could end its own line, or is none, stays out of the file', () => {
  for (const url of [
    'https://saltmarsh.example/\r\nATTENDEE:mailto:x@saltmarsh.example',
    'javascript:alert(1)',
    'https://a b',
  ]) {
    const file = writeCalendar([{ ...event, url }]);
    expect(file).not.toContain('URL');
    expect(file).not.toContain('ATTENDEE');
  }
});

const NASTY = [
  'BEGIN:VEVENT',
  '\r\nEND:VCALENDAR\r\n',
  '\\n',
  '\\',
  ';,:"',
  '\u2028',
  'é',
  '漢',
  '😀',
  '👩‍🔧',
  '\ud800',
  '\u0000',
  '\t',
  ' ',
  '﻿',
];
const nastyText = fc
  .array(fc.oneof(fc.constantFrom(...NASTY), fc.string({ unit: 'binary', maxLength: 40 }), fc.string()), {
    maxLength: 12,
  })
  .map((parts) => parts.join(''));

/** What TEXT can hold of it. */
const holdable = (words: string) => words.replace(/\r\n?/g, '\n').replace(/(?![\t\n])\p{Cc}|\p{Cs}/gu, '');

test('whatever the words are, the reader gets them back, and no line is longer than 75 octets or cuts a character', () => {
  fc.assert(
    fc.property(nastyText, nastyText, nastyText, (summary, description, location) => {
      const file = writeCalendar([{ ...event, summary, description, location }, event]);
      const bytes = new TextEncoder().encode(file);
      expect(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)).toBe(file);
      for (const line of file.split('\r\n')) {
        expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        expect(line).not.toMatch(/[\r\n]|\p{Cs}/u);
      }
      const [read, other] = readCalendar(file);
      expect(read).toMatchObject({ summary: holdable(summary), description: holdable(description) });
      expect(read?.location ?? '').toBe(holdable(location));
      expect(other?.summary).toBe(event.summary);
    }),
    { numRuns: 150 },
  );
});

test('a moment is written in UTC and comes back as the same second', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: Date.UTC(2100, 0) / 1000 }), (seconds) => {
      const at = instant(seconds * 1000);
      expect(readCalendar(writeCalendar([{ ...event, at, revisedAt: at }]))[0]).toMatchObject({ at, stamp: at });
    }),
  );
});
