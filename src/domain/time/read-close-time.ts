import * as chrono from 'chrono-node/en';
import { type Outcome, ok, refuse } from '../outcome.ts';
import type { CloseDoubt, CloseTime } from './close-time.ts';
import { type Instant, instant } from './instant.ts';
import type { LocalDate, LocalTime } from './local-date.ts';
import { resolveWallTime, type WallTime } from './resolve-wall-time.ts';
import { zoneOffset } from './wall-clock.ts';
import type { Zone } from './zone.ts';
import { type FoundZone, findZoneWords } from './zone-words.ts';

/** What is known about a close beyond its words. */
export interface CloseKnown {
  readonly now: Instant;
  readonly storeZone: Zone;
  readonly venueZone?: Zone;
  /** A zone stated beside the time, such as a column of its own. It wins over the venue's. */
  readonly zone?: Zone;
}

const LONGEST = 200;
const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const EARLIEST = Date.UTC(1990, 0, 1);
const LATEST = Date.UTC(2100, 0, 1);

/**
 * Reads when a lot closes as people and pages write it. What is understood is a wall time in a zone; the zone is what
 * the text says, else the one stated beside it, else the venue's, else the store's, which is marked as a doubt. While in
 * doubt the earliest reading holds.
 */
export function readCloseTime(text: string, known: CloseKnown): Outcome<CloseTime> {
  const tidy = text.replace(/[\u00a0\u202f\s]+/g, ' ').trim();
  if (tidy === '') return refuse('empty', 'Write when it closes, such as “Sat Nov 28 2:05 PM ET”.');
  if (tidy.length > LONGEST)
    return refuse('too-long', `This is longer than ${LONGEST} characters. Write only the time.`);
  const read = withOffset(tidy, known) ?? countdown(tidy, known) ?? wallTime(tidy, known);
  if (read.ok && (read.value.instant < EARLIEST || read.value.instant > LATEST)) {
    return refuse('out-of-range', 'This is not in any year from 1990 to 2099. Write the date with its year.');
  }
  return read;
}

/** Settles a doubtful close for one of its readings. */
export function pickCloseTime(close: CloseTime, chosen: Instant): CloseTime {
  return { ...close, instant: chosen, how: 'picked', doubts: [], otherwise: [] };
}

/** ISO 8601 with an offset or Z, and Unix time in seconds or milliseconds: nothing is left to say about those. */
function withOffset(text: string, known: CloseKnown): Outcome<CloseTime> | null {
  const unix = /^(\d{10})(\d{3})?$/.exec(text);
  const iso = /^\d{4}-\d\d-\d\d[T ]\d\d:\d\d(:\d\d(\.\d+)?)?\s?(Z|[+-]\d\d:?\d\d)$/.test(text);
  if (unix === null && !iso) return null;
  const at = unix
    ? Number(unix[1]) * 1000 + Number(unix[2] ?? 0)
    : Date.parse(text.replace(' ', 'T').replace(/\s/g, ''));
  if (!Number.isInteger(at)) return refuse('not-a-time', `There is no such date or time: “${text}”.`);
  const zone = known.zone ?? known.venueZone ?? known.storeZone;
  return ok({ instant: instant(at), text, zone, how: 'stated-offset', doubts: [], otherwise: [] });
}

/** "closes in 2h 13m", "2 d 3 h left", "45 minutes": counted from now. */
function countdown(text: string, known: CloseKnown): Outcome<CloseTime> | null {
  const bare = text
    .replace(/^(?:closes|closing|ends|ending|time left|left|in)[:\s]*(?:in\s)?/i, '')
    .replace(/\s*(?:left|remaining)$/i, '');
  const parts =
    /^(?:(\d{1,3})\s*d(?:ays?)?)?[\s,]*(?:(\d{1,3})\s*h(?:(?:ou)?rs?)?)?[\s,]*(?:(\d{1,4})\s*m(?:in(?:ute)?s?)?)?[\s,]*(?:(\d{1,4})\s*s(?:ec(?:ond)?s?)?)?$/i.exec(
      bare,
    );
  if (parts === null || bare === '' || !/\d/.test(bare)) return null;
  const [days = 0, hours = 0, minutes = 0, seconds = 0] = parts.slice(1).map((part) => Number(part ?? 0));
  const at = instant(known.now + ((days * 24 + hours) * 60 + minutes) * MINUTE + seconds * 1000);
  const zone = known.zone ?? known.venueZone ?? known.storeZone;
  return ok({ instant: at, text, zone, how: 'countdown', doubts: [], otherwise: [] });
}

function wallTime(text: string, known: CloseKnown): Outcome<CloseTime> {
  const found = findZoneWords(text);
  const words = (found?.rest ?? text).replace(/^(?:closes|closing|ends|ending|sale)\s*(?:on|at)?[:\s]*/i, '');
  const assumed = known.zone ?? known.venueZone ?? known.storeZone;
  const zone = found === null ? assumed : zoneSaid(found, assumed, known.now);
  const wall = readWords(words, known.now, zone);
  if (!wall.ok) return wall;
  const said = found === null ? [] : saidAt(found, wall.value, zone);
  const resolved = resolveWallTime(wall.value, zone);
  const readings = [...new Set([resolved.earliest, resolved.latest, ...said])].sort((a, b) => a - b);
  const doubts: CloseDoubt[] = [];
  if (resolved.kind !== 'unique') doubts.push(resolved.kind);
  if (said.length > 0) doubts.push('abbreviation');
  const how =
    found !== null || known.zone !== undefined
      ? 'stated-zone'
      : known.venueZone !== undefined
        ? 'venue-zone'
        : 'store-zone';
  if (how === 'store-zone') doubts.push('no-zone');
  if (hasOldRules(zone)) doubts.push('zone-data');
  const [first = resolved.earliest, ...otherwise] = readings;
  return ok({ instant: first, text, zone, how, doubts, otherwise });
}

/**
 * The place whose clock the words mean. Where the venue's (or the stated) clock shows the same as the words' own at this
 * time of year, it is the venue's: "MT" of a sale in Boise is Boise's, "MST" in Phoenix is Phoenix's.
 */
function zoneSaid({ words, said }: FoundZone, assumed: Zone, now: Instant): Zone {
  const wanted = said === 'either' ? zoneOffset(now, words.zone) : offsetsOf(words.zone, now)[said];
  return zoneOffset(now, assumed) === wanted ||
    (offsetsOf(assumed, now).standard === wanted && said !== 'daylight' && offsetsOf(assumed, now).daylight === wanted)
    ? assumed
    : words.zone;
}

/** The second reading where the letters contradict the date: "2 PM EST" in July is 2 PM by the clock, or 3 PM. */
function saidAt({ words, said }: FoundZone, wall: WallTime, zone: Zone): Instant[] {
  if (said === 'either') return [];
  const at = resolveWallTime(wall, zone).earliest;
  const wanted = offsetsOf(words.zone, at)[said];
  const shown = zoneOffset(at, zone);
  return shown === wanted ? [] : [instant(at + shown - wanted)];
}

/** A zone's winter and summer offsets in the year of a moment; the same where it has no summer time. */
function offsetsOf(zone: Zone, at: Instant): { standard: number; daylight: number } {
  const year = new Date(at).getUTCFullYear();
  const offsets = [0, 6].map((month) => zoneOffset(instant(Date.UTC(year, month, 15)), zone));
  return { standard: Math.min(...offsets), daylight: Math.max(...offsets) };
}

/** The date and time of day in a text, by the natural-language library; the zone is none of its business. */
function readWords(words: string, now: Instant, zone: Zone): Outcome<WallTime> {
  const reference = { instant: new Date(now), timezone: zoneOffset(now, zone) / MINUTE };
  const [found, more] = chrono.casual.parse(words, reference, { forwardDate: true });
  if (found === undefined)
    return refuse('not-a-time', `No date or time was found in “${words}”. Write it as 2026-11-28 14:05.`);
  if (more !== undefined) return refuse('two-times', `“${words}” holds more than one time. Write only the close.`);
  const { start } = found;
  if (!start.isCertain('hour')) return refuse('no-time', 'Add the time of day, such as 2:05 PM.');
  const beside = words.replace(found.text, '').replace(/^[\s,;:()-]+|[\s,;:()-]+$/g, '');
  if (/\d/.test(beside)) return refuse('not-a-time', `“${beside}” was not understood. Write it as 2026-11-28 14:05.`);
  const two = (part: 'month' | 'day' | 'hour' | 'minute') => String(start.get(part) ?? 0).padStart(2, '0');
  const date = `${String(start.get('year')).padStart(4, '0')}-${two('month')}-${two('day')}` as LocalDate;
  const time = `${two('hour')}:${two('minute')}` as LocalTime;
  if (!start.isCertain('day') && !start.isCertain('weekday')) return ok(nextOccurrence(date, time, now, zone));
  return ok({ date, time });
}

/** A time without a date is the next one: today's, or tomorrow's once it has passed. */
function nextOccurrence(date: LocalDate, time: LocalTime, now: Instant, zone: Zone): WallTime {
  const at = resolveWallTime({ date, time }, zone).latest;
  if (at > now) return { date, time };
  const tomorrow = new Date(Date.parse(`${date}T12:00Z`) + 24 * HOUR).toISOString().slice(0, 10) as LocalDate;
  return { date: tomorrow, time };
}

/**
 * Four Canadian zones stopped changing their clocks on 2026-11-01 (tz database 2026b to 2026e). A runtime that still
 * gives them a winter has rules from before that.
 */
const NOW_PERMANENT: Readonly<Record<string, number>> = {
  'America/Vancouver': -7,
  'America/Edmonton': -6,
  'America/Inuvik': -6,
  'America/Winnipeg': -5,
};

function hasOldRules(zone: Zone): boolean {
  const hours = NOW_PERMANENT[zone];
  return hours !== undefined && zoneOffset(instant(Date.UTC(2026, 11, 15)), zone) !== hours * HOUR;
}
