import { isZone, type Zone, zone } from '../time/zone.ts';
import { LOCAL_WORDS, OWN_WORDS, PLACES, UTC_WORDS, ZONE_FAMILIES, type ZoneFamily } from './zone-word-table.ts';

/** One word or number that says where a time holds. */
export type ZoneWord =
  /** A place, by its name in the tz database or as people call it; several where nobody can tell which of its clocks. */
  | { readonly kind: 'place'; readonly zones: readonly Zone[] }
  /** "ET", or, with letters for one half of the year, "EST" and its minutes ahead of UTC. */
  | { readonly kind: 'family'; readonly family: ZoneFamily; readonly letters: number | null }
  /** "-05:00", "Z": minutes ahead of UTC. */
  | { readonly kind: 'offset'; readonly minutes: number }
  | { readonly kind: 'local' }
  | { readonly kind: 'own' };

const UTC: ZoneWord = { kind: 'offset', minutes: 0 };

const placeOf = (names: readonly string[]): ZoneWord => ({ kind: 'place', zones: names.filter(isZone).map(zone) });

const MEANINGS = new Map<string, ZoneWord>([
  ...UTC_WORDS.map((word) => [word, UTC] as const),
  ...LOCAL_WORDS.map((word) => [word, { kind: 'local' }] as const),
  ...OWN_WORDS.map((word) => [word, { kind: 'own' }] as const),
  ...Object.entries(PLACES).flatMap(([name, zones]) =>
    [name, `${name} time`].map((word) => [word, placeOf(zones)] as const),
  ),
  ...ZONE_FAMILIES.flatMap((family) => {
    const meaning = (words: readonly string[], letters: number | null) =>
      words.map((word) => [word, { kind: 'family', family, letters }] as const);
    return [
      ...meaning(family.plain, null),
      ...meaning(family.standard, family.standardMinutes),
      ...meaning(family.daylight, family.standardMinutes + 60),
    ];
  }),
]);

/** Every word of the table, the longest first, so that "Eastern" does not hide "Eastern Standard Time". */
const WORDS = new RegExp(
  `(?<![a-z])(?:${[...MEANINGS.keys()]
    .sort((a, b) => b.length - a.length)
    .map((word) => word.replaceAll(' ', '\\s+'))
    .join('|')})(?![a-z])`,
  'g',
);

const IANA = /\[?\b([A-Za-z]{2,}(?:\/[A-Za-z0-9_+-]+)+)\b\]?/g;
const UTC_OFFSET = /(?<![a-z])(?:utc|gmt) ?([+-]) ?(\d{1,2})(?::?(\d\d))?(?![\d:])/g;
/** Behind seconds, or set off by a blank or by AM or PM: "10:00-12:00" is from ten to twelve. */
const BARE_OFFSET = /(?<=:\d\d:\d\d(?:[.,]\d+)?|[ap]m?|\d ) ?([+-])(\d\d):?(\d\d)(?![\d:])/g;
const ZULU = /(?<=\d ?)z(?![a-z])/g;
/** 1900Z */
const ZULU_FIGURES = /(?<![\d:.])([01]\d|2[0-3])([0-5]\d)z(?![a-z])/g;

/** Puts something else in the place of what it stood for; null leaves it as it is. */
export type Put<Meaning> = (meaning: Meaning) => string;

/** Takes names of the tz database out of a text, which alone may not be put into lower case before. */
export const takeNamedZones = (text: string, put: Put<ZoneWord>): string =>
  text.replace(IANA, (found, name: string) =>
    isZone(name) && !/^\d/.test(name) ? ` ${put({ kind: 'place', zones: [zone(name)] })} ` : found,
  );

/** Takes offsets and zone words out of a text that is plain (see plain-text.ts). */
export function takeZones(text: string, put: Put<ZoneWord>): string {
  const offset = (found: string, sign: string, hours: string, minutes = '00') => {
    const ahead = Number(hours) * 60 + Number(minutes);
    return ahead > 14 * 60 ? found : ` ${put({ kind: 'offset', minutes: sign === '-' ? -ahead : ahead })} `;
  };
  return text
    .replace(ZULU_FIGURES, '$1:$2z')
    .replace(UTC_OFFSET, offset)
    .replace(BARE_OFFSET, offset)
    .replace(ZULU, () => ` ${put(UTC)} `)
    .replace(WORDS, (found) => {
      const meaning = MEANINGS.get(found.replace(/\s+/g, ' '));
      return meaning === undefined ? found : ` ${put(meaning)} `;
    });
}
