import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { contentLine, textValue } from '../../src/domain/calendar/content-line.ts';
import { utcTime, writeCalendar } from '../../src/domain/calendar/write-calendar.ts';
import { instant } from '../../src/domain/time/instant.ts';

/** Takes folds out as RFC 5545, section 3.1, tells a reader to: a line break followed by one blank or tab goes. */
const unfold = (text: string) => text.replace(/\r\n[ \t]/g, '');

test('the long description of RFC 5545, section 3.1, is the same line folded by the standard or by us', () => {
  // "DESCRIPTION:This is a lo / n description / that exists on a long line." with its folds.
  const printed = 'DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n';
  expect(contentLine('DESCRIPTION', 'This is a long description that exists on a long line.')).toBe(unfold(printed));
});

test('a line of 75 octets is left alone, and one of 76 is folded (RFC 5545, section 3.1)', () => {
  expect(contentLine('X', 'a'.repeat(73))).toBe(`X:${'a'.repeat(73)}\r\n`);
  expect(contentLine('X', 'a'.repeat(74))).toBe(`X:${'a'.repeat(73)}\r\n a\r\n`);
  // The blank that begins a line after a fold counts: 74 more fit.
  expect(contentLine('X', 'a'.repeat(148)).split('\r\n')[1]).toBe(` ${'a'.repeat(74)}`);
});

test('a character of several octets goes whole to the next line (RFC 5545, section 3.1, allows less)', () => {
  const lines = contentLine('X', `${'a'.repeat(72)}é${'a'.repeat(3)}`).split('\r\n');
  expect(lines.map((line) => Buffer.byteLength(line))).toEqual([74, 6, 0]);
});

test.each([
  // RFC 5545, section 3.3.11: the example of a text in several lines.
  [
    'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.',
    'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
  ],
  // The same section: "ESCAPED-CHAR = ("\\" / "\;" / "\," / "\N" / "\n")", and a colon is not escaped.
  ['\\', '\\\\'],
  [';', '\\;'],
  [',', '\\,'],
  [':', ':'],
  // Section 3.8.1.12: RESOURCES and section 3.8.1.7's example of a LOCATION, whose comma is escaped.
  ['Conference Room - F123, Bldg. 002', 'Conference Room - F123\\, Bldg. 002'],
])('text %j is written %j (RFC 5545, sections 3.3.11 and 3.8.1.7)', (words, written) => {
  expect(textValue(words)).toBe(written);
});

test('January 19, 1998, at 0700 UTC is written as RFC 5545, section 3.3.5, prints it', () => {
  expect(utcTime(instant(Date.UTC(1998, 0, 19, 7)))).toBe('19980119T070000Z');
});

test('a closing has the properties the standard asks for, and an alarm its three (RFC 5545, sections 3.6, 3.6.1, 3.6.6)', () => {
  const at = instant(Date.UTC(2026, 10, 28, 19, 5));
  const file = writeCalendar([
    {
      uid: 'u',
      sequence: 0,
      revisedAt: at,
      at,
      summary: 's',
      description: 'd',
      status: 'CANCELLED',
      alarms: [{ at: instant(at - 900_000), words: 'w' }],
    },
  ]);
  const calendar = new ICAL.Component(ICAL.parse(file));
  expect(calendar.getAllProperties().map(({ name }) => name)).toEqual(['version', 'prodid', 'calscale']);
  const [event] = calendar.getAllSubcomponents();
  // Without METHOD, DTSTART is required beside UID and DTSTAMP; without DTEND and DURATION it ends when it starts.
  expect(event?.getAllProperties().map(({ name }) => name)).toEqual(
    expect.arrayContaining(['uid', 'dtstamp', 'dtstart', 'sequence', 'status']),
  );
  for (const name of ['dtend', 'duration']) expect(event?.hasProperty(name)).toBe(false);
  const [alarm] = event?.getAllSubcomponents() ?? [];
  expect(alarm?.getAllProperties().map(({ name }) => name)).toEqual(['action', 'trigger', 'description']);
  // Section 3.8.6.3 prints a trigger 15 minutes before the start as "TRIGGER:-PT15M".
  expect(file).toContain('\r\nTRIGGER:-PT15M\r\n');
  // Section 3.8.1.11: an event's status is one of three words.
  expect(file).toContain('\r\nSTATUS:CANCELLED\r\n');
});
