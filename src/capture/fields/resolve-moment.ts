import { readCloseTime } from '../../domain/close/read-close-time.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import { isZone, type Zone, zone as zoneNamed } from '../../domain/time/zone.ts';
import { afternoon } from '../tokens/clock-tokens.ts';
import type { MomentToken } from '../tokens/moment-tokens.ts';
import { zoneOfPlace } from '../tokens/places.ts';
import type { ClockContext } from './field-reader.ts';
import type { SharedTime } from './shared-time.ts';

/** A moment as a close, and how much is lost by what had to be supplied: 1 when nothing had. */
export interface ResolvedMoment {
  readonly close: CloseTime;
  readonly factor: number;
}

/** What is known beside the words of the moment itself. */
export interface Besides {
  readonly clock: ClockContext;
  readonly shared: SharedTime;
  readonly labelZone: string;
  /** Where the car is said to be. */
  readonly place: string;
  /** The lot is one of a list, whose day and zone may stand above it. */
  readonly listed: boolean;
}

/** Reads a moment with what is said beside it; null when it can't be understood, or only by guessing. */
export function resolveMoment(token: MomentToken, besides: Besides): ResolvedMoment | null {
  const { clock, shared } = besides;
  if (token.iso !== '') return read(token.iso, token, besides, 1);
  if (token.clock === null) return null;
  const own = token.date;
  const day = own ?? shared.day?.date ?? null;
  const time = timeOf(token, shared);
  if (time === null) return null;
  const date = day === null ? '' : [day.weekday, day.date].filter((part) => part !== '').join(' ');
  const zone = token.zone || besides.labelZone || shared.zone || clock.stated;
  const factor =
    (own !== null ? 1 : day !== null ? 0.95 : besides.listed ? 0.5 : 0.72) *
    (token.clock.half && token.part === '' ? 0.92 : 1) *
    (day?.guessed === true ? 0.5 : 1);
  return read(`${date} ${time} ${zone}`.replace(/\s+/g, ' ').trim(), token, { ...besides, clock }, factor);
}

/** On the 24-hour clock; null where morning or afternoon can't be told. */
function timeOf({ clock, part }: MomentToken, { first }: SharedTime): string | null {
  if (clock === null) return null;
  if (!clock.half) return onTwelve(clock.time);
  if (part === 'p') return onTwelve(afternoon(clock.time));
  if (part === 'a') return onTwelve(clock.time);
  // Lots that end one after the other end after the first.
  const from = first?.clock?.time;
  if (from !== undefined) return onTwelve(clock.time >= from ? clock.time : afternoon(clock.time));
  // Both can be meant: the reader of closing times asks which.
  return clock.time.replace(/^0/, '');
}

/** So that nobody reads 12:00 or 9:00 as either half of the day. */
function onTwelve(time: string): string {
  const hour = Number(time.slice(0, 2));
  return `${hour % 12 === 0 ? 12 : hour % 12}${time.slice(2)} ${hour < 12 ? 'AM' : 'PM'}`;
}

function read(text: string, token: MomentToken, { clock, place }: Besides, factor: number): ResolvedMoment | null {
  const fixed = zoneOfPlace(place);
  const venueZone = clock.venueZone ?? (fixed !== undefined && isZone(fixed) ? zoneNamed(fixed) : undefined);
  const known: { now: ClockContext['now']; storeZone: Zone; venueZone?: Zone } = {
    now: clock.now,
    storeZone: clock.storeZone,
    ...(venueZone === undefined ? {} : { venueZone }),
  };
  const outcome = readCloseTime(text, known);
  if (!outcome.ok) return null;
  const close = { ...outcome.value, text: token.text.slice(0, 200) };
  const doubts = close.doubts.filter((doubt) => doubt !== 'zone-data');
  const zoned = close.how === 'store-zone' ? 0.5 : close.how === 'venue-zone' ? 0.9 : 1;
  return { close, factor: Math.min(factor * zoned, doubts.length > 0 ? 0.5 : 1) };
}
