import { type Outcome, ok, refuse } from '../outcome.ts';
import type { CloseDoubt, CloseTime } from '../time/close-time.ts';
import type { CloseKnown } from './close-known.ts';
import { closingPart } from './closing-part.ts';
import { clockAsTimeLeft, readCountdown } from './countdown.ts';
import { readMoment } from './read-moment.ts';
import type { Reading } from './reading.ts';
import { scan } from './scan.ts';
import { timestampNumber } from './timestamp-number.ts';

const LONGEST = 200;
const EARLIEST = Date.UTC(1990, 0, 1);
const LATEST = Date.UTC(2100, 0, 1);
/** More readings than this are a guess and no question. */
const MOST_READINGS = 6;

/**
 * Reads when a lot closes as people, pages and tables write it: a date and time with or without a zone, a weekday or no
 * day at all, an ISO or Unix timestamp, a spreadsheet's day number, or a countdown from now. The zone is what the text says,
 * else the one stated beside it, else the venue's, else the store's, which is marked as a doubt. What could be understood in
 * several ways is never told as a fact: the earliest reading that is still ahead holds, the others stand in `otherwise`, and
 * `doubts` says why. Words that nobody understands here are refused, with what to write instead.
 */
export function readCloseTime(text: string, known: CloseKnown): Outcome<CloseTime> {
  const tidy = text.replace(/\s+/g, ' ').trim();
  if (tidy === '') return refuse('empty', 'Write when it closes, such as “Sat Nov 28 2:05 PM ET”.');
  if (text.length > LONGEST)
    return refuse('too-long', `This is longer than ${LONGEST} characters. Write only the time.`);
  const read = readTidy(tidy, known);
  if (!read.ok) return read;
  const { moments, doubts, ...rest } = read.value;
  const inOrder = [...new Set(moments)].sort((a, b) => a - b).slice(0, MOST_READINGS);
  const holds = inOrder.find((at) => at >= known.now) ?? inOrder[0];
  if (holds === undefined || (inOrder[0] ?? 0) < EARLIEST || (inOrder.at(-1) ?? 0) >= LATEST)
    return refuse('out-of-range', 'This is not in any year from 1990 to 2099. Write the date with its year.');
  const otherwise = inOrder.filter((at) => at !== holds);
  return ok({ ...rest, instant: holds, text: text.trim(), doubts: distinct(doubts), otherwise });
}

const distinct = (doubts: readonly CloseDoubt[]): CloseDoubt[] => [...new Set(doubts)];

function readTidy(text: string, known: CloseKnown): Outcome<Reading> {
  const number = timestampNumber(text, known.now);
  if (number?.kind === 'moment') {
    const zone = known.zone ?? known.venueZone ?? known.storeZone;
    return ok({ zone, moments: [number.at], doubts: [], how: 'stated-offset' });
  }
  const { tokens, misspelled } = scan(number?.kind === 'wall' ? number.text : text);
  const part = closingPart(tokens);
  if (!part.ok) return part;
  const read = readCountdown(part.value, known) ?? readMoment(part.value, known);
  if (!read.ok) return read;
  const left = read.value.how === 'countdown' ? null : clockAsTimeLeft(part.value, known);
  const { moments, doubts } = read.value;
  return ok({
    ...read.value,
    moments: [...moments, ...(left?.moments ?? [])],
    doubts: [...doubts, ...(left?.doubts ?? []), ...(misspelled ? (['spelling'] as const) : [])],
  });
}
