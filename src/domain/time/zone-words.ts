import type { CloseDoubt } from './close-time.ts';
import { instant } from './instant.ts';
import type { LocalDate, LocalTime } from './local-date.ts';
import { type Moments, momentsIn, together } from './moments-in-zone.ts';
import { asIfUtc, type WallTime } from './resolve-wall-time.ts';
import { MINUTE } from './units.ts';
import { isZone, type Zone, zone } from './zone.ts';
import { LOCAL_WORDS, UTC_WORDS, ZONE_FAMILIES, type ZoneFamily } from './zone-word-table.ts';

/** A zone as someone wrote it: what it stands for, and the text with those words taken out. */
export interface ZoneWords {
  readonly meaning:
    | { readonly kind: 'zone'; readonly zone: Zone }
    | { readonly kind: 'local' }
    | { readonly kind: 'family'; readonly family: ZoneFamily; readonly offsetMinutes: number | null };
  readonly rest: string;
}

/**
 * The zone that words such as "ET", "Mountain Standard Time", "Phoenix" or "America/Denver" mean on a date, and why that
 * is doubtful, if it is: letters that contradict the date (EST in July) or the venue's clock, or old rules in this runtime.
 * @param known.date the date they are said of; letters for standard or daylight time fit one half of the year only
 * @returns null when there is no zone in the text, or more than one
 */
export function zoneFromWords(
  text: string,
  known: { readonly venueZone?: Zone | undefined; readonly date: LocalDate },
): { readonly zone: Zone; readonly doubts: readonly CloseDoubt[] } | null {
  const words = findZoneWords(text);
  if (words === null || words === 'several') return null;
  const wall = { date: known.date, time: '12:00' as LocalTime };
  const read = momentsByWords(words, wall, known.venueZone);
  return read === null ? null : { zone: read.zone, doubts: read.doubts };
}

/** What a wall time with these words can mean; null for "local time" at a venue whose zone is not known. */
export function momentsByWords({ meaning }: ZoneWords, wall: WallTime, venueZone: Zone | undefined): Moments | null {
  if (meaning.kind === 'zone') return momentsIn(meaning.zone, wall);
  const atVenue = venueZone === undefined ? null : momentsIn(venueZone, wall);
  if (meaning.kind === 'local') return atVenue;
  const inFamily = momentsIn(zone(meaning.family.zone), wall);
  if (meaning.offsetMinutes === null) return agreed(inFamily, atVenue);
  return byLetters(asIfUtc(wall) - meaning.offsetMinutes * MINUTE, inFamily, atVenue);
}

/** "ET" says no more than a place: the venue's own clock either agrees or contradicts. */
function agreed(inFamily: Moments, atVenue: Moments | null): Moments {
  if (atVenue === null) return inFamily;
  const same = atVenue.moments.join() === inFamily.moments.join();
  return same ? atVenue : together(inFamily.zone, [inFamily, atVenue], 'abbreviation');
}

/** "EST" names an offset, which may be what the venue's or the family's clocks show that day, or a habit of the pen. */
function byLetters(literalMs: number, inFamily: Moments, atVenue: Moments | null): Moments {
  const literal = instant(literalMs);
  const settles = (reading: Moments) =>
    reading.moments.includes(literal) && reading.doubts.every((doubt) => doubt === 'overlap');
  if (atVenue !== null && settles(atVenue)) return { ...atVenue, moments: [literal], doubts: [] };
  const exact = settles(inFamily) ? { ...inFamily, moments: [literal], doubts: [] } : inFamily;
  const written = { zone: inFamily.zone, moments: [literal], doubts: [] };
  const readings = exact.moments.includes(literal) ? [exact] : [exact, written];
  return together(inFamily.zone, atVenue === null ? readings : [...readings, atVenue], 'abbreviation');
}

/** Looks for one zone in a text. `several` when two that differ are named. */
export function findZoneWords(text: string): ZoneWords | 'several' | null {
  const named = /\b[A-Z][A-Za-z]+(?:\/[A-Za-z0-9_+-]+)+\b/.exec(text)?.[0];
  if (named !== undefined && isZone(named))
    return { meaning: { kind: 'zone', zone: zone(named) }, rest: text.replace(named, ' ') };
  const found = [...text.matchAll(WORDS)].map((match) => MEANINGS.get(wordKey(match[0])));
  const meanings = found.filter((meaning) => meaning !== undefined);
  const [first, ...others] = meanings;
  if (first === undefined) return null;
  const meaning = others.reduce<ZoneWords['meaning'] | null>(narrower, first);
  return meaning === null ? 'several' : { meaning, rest: text.replace(WORDS, ' ') };
}

/** Of two ways to name a zone the one that says more: "Arizona (MST)" is Arizona, "Eastern (EST)" is EST. */
function narrower(a: ZoneWords['meaning'] | null, b: ZoneWords['meaning']): ZoneWords['meaning'] | null {
  if (a === null) return null;
  if (a.kind === 'local') return b;
  if (b.kind === 'local') return a;
  if (a.kind === 'zone') return b.kind === 'zone' && a.zone === b.zone ? a : null;
  if (b.kind === 'zone') return null;
  if (a.family.zone === b.family.fixedZone) return a;
  if (b.family.zone === a.family.fixedZone) return b;
  if (a.family !== b.family) return null;
  return a.offsetMinutes === null ? b : a;
}

const wordKey = (text: string): string => text.toLowerCase().replace(/\s+/g, ' ');

const MEANINGS = new Map<string, ZoneWords['meaning']>([
  ...UTC_WORDS.map((word) => [word, { kind: 'zone', zone: zone('UTC') }] as const),
  ...LOCAL_WORDS.map((word) => [word, { kind: 'local' }] as const),
  ...ZONE_FAMILIES.flatMap((family) => [
    ...family.plain.map((word) => [word, { kind: 'family', family, offsetMinutes: null }] as const),
    ...family.standard.map(
      (word) => [word, { kind: 'family', family, offsetMinutes: family.standardMinutes }] as const,
    ),
    ...family.daylight.map(
      (word) => [word, { kind: 'family', family, offsetMinutes: family.standardMinutes + 60 }] as const,
    ),
  ]),
]);

/** Every word of the table, the longest first, so that "Eastern" does not hide "Eastern Standard Time". */
const WORDS = new RegExp(
  `(?<![a-z])(?:${[...MEANINGS.keys()]
    .sort((a, b) => b.length - a.length)
    .map((word) => word.replace(/[()]/g, '\\$&').replaceAll(' ', '\\s+'))
    .join('|')})(?![a-z])`,
  'gi',
);
