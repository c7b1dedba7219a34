import type { Instant } from '../time/instant.ts';
import type { CalendarAlarm, CalendarEvent } from './calendar-event.ts';
import { contentLine, textValue } from './content-line.ts';

/**
 * An iCalendar file (RFC 5545) with one event a closing. Times are in UTC, because a close is a moment: every reader
 * shows it by its own clock, and no time zone's rules have to travel with the file. A close takes no time, so an event
 * has a start and no end (section 3.6.1). There is no METHOD: this is a file to keep, not an invitation.
 * @param events at least one: a calendar without any part is not valid
 */
export function writeCalendar(events: readonly CalendarEvent[]): string {
  return [
    contentLine('BEGIN', 'VCALENDAR'),
    contentLine('VERSION', '2.0'),
    contentLine('PRODID', '-//Headroom//Closings//EN'),
    contentLine('CALSCALE', 'GREGORIAN'),
    ...events.map(eventLines),
    contentLine('END', 'VCALENDAR'),
  ].join('');
}

/** `20261128T190500Z`: section 3.3.5, form 2. The closes of this trade are on whole seconds; what is less is cut off. */
export function utcTime(at: Instant): string {
  return `${new Date(at).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`;
}

function eventLines(event: CalendarEvent): string {
  return [
    contentLine('BEGIN', 'VEVENT'),
    contentLine('UID', textValue(event.uid)),
    contentLine('DTSTAMP', utcTime(event.revisedAt)),
    contentLine('LAST-MODIFIED', utcTime(event.revisedAt)),
    contentLine('SEQUENCE', String(event.sequence)),
    contentLine('STATUS', event.status),
    contentLine('DTSTART', utcTime(event.at)),
    contentLine('SUMMARY', textValue(event.summary)),
    contentLine('DESCRIPTION', textValue(event.description)),
    ...(event.location ? [contentLine('LOCATION', textValue(event.location))] : []),
    ...(event.url !== undefined && isPlainAddress(event.url) ? [contentLine('URL', event.url)] : []),
    ...event.alarms.map((alarm) => alarmLines(alarm, event.at)),
    contentLine('END', 'VEVENT'),
  ].join('');
}

function alarmLines({ at, words }: CalendarAlarm, event: Instant): string {
  return [
    contentLine('BEGIN', 'VALARM'),
    contentLine('ACTION', 'DISPLAY'),
    contentLine('TRIGGER', `-${duration(Math.floor(event / 1000) - Math.floor(at / 1000))}`),
    contentLine('DESCRIPTION', textValue(words)),
    contentLine('END', 'VALARM'),
  ].join('');
}

/** `PT15M`, `PT4M30S`: section 3.3.6. */
function duration(seconds: number): string {
  const rest = seconds % 60;
  return `PT${Math.floor(seconds / 60)}M${rest === 0 ? '' : `${rest}S`}`;
}

/** An address goes into the file as it is, so one that holds anything but the characters of RFC 3986 stays out. */
const isPlainAddress = (url: string) => /^https?:\/\/[\w.~:/?#[\]@!$&'()*+,;=%-]+$/.test(url);
