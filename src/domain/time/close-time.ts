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
 * - `zone-data`: the zone's rules changed lately and this browser may have old ones.
 */
export const CLOSE_DOUBTS = ['gap', 'overlap', 'abbreviation', 'no-zone', 'zone-data'] as const;
export type CloseDoubt = (typeof CLOSE_DOUBTS)[number];

/**
 * When a lot closes: the instant, what was typed or read, the zone it was read in, and how it was settled. While in
 * doubt, `instant` is the earliest reading, so that alerts come early rather than late.
 */
export const closeTimeSchema = z.strictObject({
  instant: instantSchema,
  text: z.string().check(z.maxLength(200)),
  zone: zoneSchema,
  how: z.enum(['stated-offset', 'stated-zone', 'venue-zone', 'store-zone', 'countdown', 'picked']),
  doubts: z.array(z.enum(CLOSE_DOUBTS)),
  /** The other instants it could mean; the user picks one, after which `how` is `picked`. */
  otherwise: z.array(instantSchema),
});
export type CloseTime = z.infer<typeof closeTimeSchema>;

/** The same close with time added by the sale: what the page said stays, and every other reading moves along. */
export function extendClose(close: CloseTime, minutes: number): CloseTime {
  const later = (at: Instant) => shifted(at, minutes * MINUTE);
  return { ...close, instant: later(close.instant), otherwise: close.otherwise.map(later) };
}

/** The last moment at which it can close: while in doubt, the latest of its readings. Until then nobody can say that it has. */
export function lastReading({ instant: at, doubts, how, otherwise }: CloseTime): Instant {
  if (doubts.length === 0 || how === 'picked') return at;
  return Math.max(at, ...otherwise) as Instant;
}

/** Settles a doubtful close for one of its readings, or confirms the only one. */
export function pickCloseTime(close: CloseTime, chosen: Instant): CloseTime {
  return { ...close, instant: chosen, how: 'picked', doubts: [], otherwise: [] };
}
