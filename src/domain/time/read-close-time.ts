import { type Outcome, ok, refuse } from '../outcome.ts';
import type { CloseTime } from './close-time.ts';
import { countdownMs } from './countdown.ts';
import { type Instant, instant } from './instant.ts';
import { type Moments, momentsIn } from './moments-in-zone.ts';
import { asIfUtc, type WallTime } from './resolve-wall-time.ts';
import { timestampNumber } from './timestamp-number.ts';
import { MINUTE } from './units.ts';
import { type WallClock, wallClock } from './wall-clock.ts';
import { writtenDate } from './written-date.ts';
import { writtenTime } from './written-time.ts';
import { type Zone, zone as zoneNamed } from './zone.ts';
import { findZoneWords, momentsByWords, type ZoneWords } from './zone-words.ts';

/** What is known about a close beyond its words. */
export interface CloseKnown {
  readonly now: Instant;
  readonly storeZone: Zone;
  readonly venueZone?: Zone | undefined;
  /** A zone stated beside the time, such as a column of its own. It wins over the venue's. */
  readonly zone?: Zone | undefined;
}

const UTC = zoneNamed('UTC');
const LONGEST = 200;
const EARLIEST = Date.UTC(1990, 0, 1);
const LATEST = Date.UTC(2100, 0, 1);

/**
 * Reads when a lot closes as people, pages and tables write it: a date and time with or without a zone, a weekday or no
 * day at all (then the next one), an ISO or Unix timestamp, a spreadsheet's day number, or a countdown from now. The zone is
 * what the text says, else the one stated beside it, else the venue's, else the store's, which is marked as a doubt. While
 * in doubt the earliest reading holds and the others stand in `otherwise`. What could be understood in two ways that differ
 * by more than a zone (no AM or PM, two times, "next Friday") is refused with what to write instead.
 */
export function readCloseTime(text: string, known: CloseKnown): Outcome<CloseTime> {
  const tidy = text
    .normalize('NFKC')
    .replace(/\s+/g, ' ')
    .replace(/\b(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)?/, '$1-$2-$3T$4:$5:$6')
    .replace(/:(?=Z|$|[+-])/, '')
    .trim();
  if (tidy === '') return refuse('empty', 'Write when it closes, such as “Sat Nov 28 2:05 PM ET”.');
  if (text.length > LONGEST)
    return refuse('too-long', `This is longer than ${LONGEST} characters. Write only the time.`);
  const read = readTidy(tidy, known);
  if (!read.ok) return read;
  const { moments, ...rest } = read.value;
  const [first, ...otherwise] = moments;
  if (first === undefined || first < EARLIEST || (moments.at(-1) ?? first) >= LATEST)
    return refuse('out-of-range', 'This is not in any year from 1990 to 2099. Write the date with its year.');
  return ok({ instant: first, text: text.trim(), ...rest, otherwise });
}

type Read = Moments & Pick<CloseTime, 'how' | 'doubts'>;

function readTidy(text: string, known: CloseKnown): Outcome<Read> {
  const zone = known.zone ?? known.venueZone ?? known.storeZone;
  const exactly = (at: number, how: CloseTime['how']) => ok({ zone, moments: [instant(at)], how, doubts: [] });
  const left = countdownMs(text);
  if (left !== null) return exactly(known.now + left, 'countdown');
  const number = timestampNumber(text);
  if (number?.kind === 'moment') return exactly(number.at, 'stated-offset');
  if (number?.kind === 'no-time') return refuse('no-time', 'The time of day is missing. Add it, such as 2:05 PM.');
  if (number?.kind === 'wall') return ok(inZone(number.wall, null, known));
  const offset = findOffset(text);
  const words = findZoneWords(offset?.rest ?? text);
  if (words === 'several' && offset === null)
    return refuse('two-zones', 'There is more than one time zone here. Keep the time with its own zone.');
  const named = words === 'several' ? null : words;
  const clock = offset === null ? clockWhereSaid(named, known) : clockAt(offset.minutes, known.now);
  const wall = writtenWall(named?.rest ?? offset?.rest ?? text, clock);
  if (!wall.ok) return wall;
  if (offset !== null) return exactly(asIfUtc(wall.value) - offset.minutes * MINUTE, 'stated-offset');
  return ok(inZone(wall.value, named, known));
}

/** The current time at the venue: it decides which days "today" and "Sat" are. */
function clockWhereSaid(words: ZoneWords | null, known: CloseKnown): WallClock {
  const place = known.zone ?? known.venueZone;
  const here = wallClock(known.now, place ?? known.storeZone);
  const zone = words === null ? undefined : momentsByWords(words, here, place)?.zone;
  return zone === undefined ? here : wallClock(known.now, zone);
}

const clockAt = (offsetMinutes: number, now: Instant): WallClock =>
  wallClock(instant(now + offsetMinutes * MINUTE), UTC);

function writtenWall(text: string, clock: WallClock): Outcome<WallTime> {
  const plain = text
    .replace(/[()[\]|·•@]/g, ' ')
    .replace(/(\d)T(\d)/, '$1 $2')
    .replace(/\s+/g, ' ')
    .trim();
  const time = writtenTime(plain);
  if (!time.ok) return time;
  const date = writtenDate(time.value.rest, time.value.time, clock);
  if (!date.ok) return date;
  if (date.value < '1990-01-01' || date.value > '2099-12-31')
    return refuse('out-of-range', 'This is not in any year from 1990 to 2099. Write the date with its year.');
  return ok({ date: date.value, time: time.value.time, second: time.value.second });
}

function inZone(wall: WallTime, words: ZoneWords | null, known: CloseKnown): Read {
  const place = known.zone ?? known.venueZone;
  const said = words === null ? null : momentsByWords(words, wall, place);
  if (said !== null)
    return { ...said, doubts: [...said.doubts], how: words?.meaning.kind === 'local' ? 'venue-zone' : 'stated-zone' };
  const read = momentsIn(place ?? known.storeZone, wall);
  if (known.zone !== undefined) return { ...read, doubts: [...read.doubts], how: 'stated-zone' };
  if (known.venueZone !== undefined) return { ...read, doubts: [...read.doubts], how: 'venue-zone' };
  return { ...read, doubts: [...read.doubts, 'no-zone'], how: 'store-zone' };
}

/** "-05:00", "GMT-0500", "UTC+1" or Z behind a time; it leaves no room for doubt, so zone words beside it do not count. */
function findOffset(text: string): { readonly minutes: number; readonly rest: string } | null {
  const match =
    /(?<=[:\d][\dap.m]+) ?Z\b|(?:\b(?:UTC|GMT)|(?<=:\d\d(?:\.\d+)?|[ap]\.?m\.?)) ?([+\-−])(\d{1,2}):?(\d\d)?\b(?! ?[ap]m)/i.exec(
      text,
    );
  if (match === null) return null;
  const minutes = Number(match[2] ?? 0) * 60 + Number(match[3] ?? 0);
  if (minutes > 14 * 60) return null;
  const rest = text.replace(match[0], ' ').replace(/\(.*\)/, ' ');
  return { minutes: match[1] === undefined || match[1] === '+' ? minutes : -minutes, rest };
}
