import * as z from 'zod/mini';
import { type Instant, instantSchema, shifted } from './instant.ts';
import { MINUTE } from './units.ts';
import { zoneSchema } from './zone.ts';

/**
 * Why a close time deserves a second look:
 * - `gap`: the wall time is skipped by a daylight-saving change and does not exist;
 * - `overlap`: the wall time happens twice that night;
 * - `abbreviation`: the page's zone letters contradict the date (EST in July) or can mean several zones;
 * - `no-zone`: nothing said which zone; the store's was taken;
 * - `zone-data`: the zone's rules changed lately and this browser may have old ones;
 * - `half-day`: nothing says whether it is before or after noon;
 * - `midnight`: it can begin or end the day, or is a date that was written out without its time;
 * - `day-order`: the figures can be month and day, or day and month;
 * - `which-day`: the day just past or one to come; today by the venue's clock or by the store's;
 * - `weekday`: the weekday is not that of the date;
 * - `range`: several times or days are written, and it is one of them;
 * - `two-clocks`: it is said twice, and the two are not the same moment;
 * - `countdown`: time left, in hours and minutes or in minutes and seconds;
 * - `approximate`: the writer himself says that it is about then;
 * - `closed-ahead`: it is said to have closed, at a time still to come;
 * - `spelling`: letters of a word are wrong.
 */
export const CLOSE_DOUBTS = [
  'gap',
  'overlap',
  'abbreviation',
  'no-zone',
  'zone-data',
  'half-day',
  'midnight',
  'day-order',
  'which-day',
  'weekday',
  'range',
  'two-clocks',
  'countdown',
  'approximate',
  'closed-ahead',
  'spelling',
] as const;
export type CloseDoubt = (typeof CLOSE_DOUBTS)[number];

/**
 * When a lot closes: the instant, what was typed or read, the zone it was read in, and how it was settled. While in
 * doubt, `instant` is the earliest reading that was still ahead when it was read, so that alerts come early rather than late.
 */
export const closeTimeSchema = z.strictObject({
  instant: instantSchema,
  text: z.string().check(z.maxLength(200)),
  zone: zoneSchema,
  how: z.enum(['stated-offset', 'stated-zone', 'venue-zone', 'store-zone', 'countdown', 'picked']),
  doubts: z.array(z.enum(CLOSE_DOUBTS)),
  /** The other instants it could mean; the user picks one, after which `how` is `picked`. */
  otherwise: z.array(instantSchema),
  /** A countdown that was told to the day or the hour only: the close comes then or up to a day or an hour later. */
  finest: z.optional(z.enum(['day', 'hour'])),
});
export type CloseTime = z.infer<typeof closeTimeSchema>;

/** The same close with time added by the sale: what the page said stays, and every other reading moves along. */
export function extendClose(close: CloseTime, minutes: number): CloseTime {
  const later = (at: Instant) => shifted(at, minutes * MINUTE);
  return { ...close, instant: later(close.instant), otherwise: close.otherwise.map(later) };
}

/** Whether two closes are so near to each other that a reminder of the one is one of the other: less than a minute apart. */
export const isSameClose = (one: Instant, other: Instant): boolean => Math.abs(one - other) < MINUTE;

/** Whether it can mean several moments and nobody has chosen one. */
export const isOpenQuestion = ({ doubts, how, otherwise }: CloseTime): boolean =>
  doubts.length > 0 && how !== 'picked' && otherwise.length > 0;

/** Every moment at which it can close, the earliest first. */
export const readingsOfClose = (close: CloseTime): readonly Instant[] =>
  isOpenQuestion(close) ? [close.instant, ...close.otherwise].sort((a, b) => a - b) : [close.instant];

/** The next moment at which it can close; the last one when all have passed. */
export const nextReading = (close: CloseTime, now: number): Instant =>
  readingsOfClose(close).find((at) => at > now) ?? lastReading(close);

/** The last moment at which it can close: while in doubt, the latest of its readings. Until then nobody can say that it has. */
export const lastReading = (close: CloseTime): Instant =>
  isOpenQuestion(close) ? (Math.max(close.instant, ...close.otherwise) as Instant) : close.instant;

/** Settles a doubtful close for one of its readings, or confirms the only one. */
export function pickCloseTime(close: CloseTime, chosen: Instant): CloseTime {
  const { finest: _, ...rest } = close;
  return { ...rest, instant: chosen, how: 'picked', doubts: [], otherwise: [] };
}
