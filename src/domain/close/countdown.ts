import { type Outcome, ok } from '../outcome.ts';
import type { CloseDoubt } from '../time/close-time.ts';
import { instant } from '../time/instant.ts';
import { DAY, HOUR, MINUTE, SECOND } from '../time/units.ts';
import type { CloseKnown } from './close-known.ts';
import type { ClosingPart } from './closing-part.ts';
import type { Reading } from './reading.ts';
import type { Finest, Token, WrittenDuration } from './token.ts';

const UNIT_MS = { days: DAY, hours: HOUR, minutes: MINUTE } as const;

/** Time that is left, or that has gone by; null when the text says a time of day or a date as well, or neither. */
export function readCountdown({ tokens, closed, about }: ClosingPart, known: CloseKnown): Outcome<Reading> | null {
  const { now, column } = known;
  const left = column?.countsDown !== undefined || tokens.some(({ kind }) => kind === 'left');
  const ago = tokens.some(({ kind }) => kind === 'ago');
  const told = tokens.filter(({ kind }) => !BESIDE.has(kind));
  const [only, another] = told;
  if (only === undefined || another !== undefined) return null;
  const duration = durationOf(only, left, column?.countsDown);
  if (duration === null || (ago && !closed)) return null;
  const { ms, finest } = duration;
  const doubts: CloseDoubt[] = [
    ...(ms.length > 1 ? (['range'] as const) : []),
    ...(about ? (['approximate'] as const) : []),
  ];
  return ok({
    zone: known.zone ?? known.venueZone ?? known.storeZone,
    moments: ms.map((one) => instant(ago ? now - one : now + one)),
    doubts: [...doubts, ...duration.doubts],
    how: 'countdown',
    ...(finest !== 'minute' && !ago && { finest }),
  });
}

const BESIDE: ReadonlySet<Token['kind']> = new Set(['left', 'ago', 'closed', 'at', 'join']);

interface TimeLeft extends WrittenDuration {
  readonly doubts: readonly CloseDoubt[];
}

const exactly = (ms: number, finest: Finest = 'minute'): TimeLeft => ({ ms: [ms], finest, doubts: [] });

function durationOf(token: Token, left: boolean, unit: string | undefined): TimeLeft | null {
  if (token.kind === 'duration') return { ...token.duration, doubts: [] };
  if (token.kind === 'clock-down') return token.withDays || left ? exactly(clockMs(token.parts)) : null;
  if (token.kind === 'number') {
    const ms = unit === undefined || unit === 'by its words' ? undefined : UNIT_MS[unit as keyof typeof UNIT_MS];
    return ms === undefined
      ? null
      : exactly(token.value * ms, unit === 'days' ? 'day' : unit === 'hours' ? 'hour' : 'minute');
  }
  if (token.kind !== 'time' || token.time.half !== null || !left) return null;
  const { hour, minute, second, withSeconds } = token.time;
  if (withSeconds) return exactly(clockMs([0, hour, minute, second]));
  return {
    ms: [hour * MINUTE + minute * SECOND, hour * HOUR + minute * MINUTE],
    finest: 'minute',
    doubts: ['countdown'],
  };
}

const clockMs = ([days = 0, hours = 0, minutes = 0, seconds = 0]: readonly number[]): number =>
  days * DAY + hours * HOUR + minutes * MINUTE + seconds * SECOND;

/** A bare 00:45:12 may be time left as well as a time of day; null for anything else. */
export function clockAsTimeLeft({ tokens }: ClosingPart, known: CloseKnown): Reading | null {
  const [only, another] = tokens;
  if (another !== undefined || only?.kind !== 'time' || only.time.half !== null || !only.time.withSeconds) return null;
  const left = readCountdown({ tokens: [only, { kind: 'left' }], closed: false, about: false }, known);
  return left?.ok === true ? { ...left.value, doubts: ['countdown'] } : null;
}
