import { type Zone, zone } from './zone.ts';

/** What pages and people call a zone: a place whose clock it is, the letters of its winter and summer time, and words for both. */
export interface ZoneWords {
  readonly zone: Zone;
  readonly standard: readonly string[];
  readonly daylight: readonly string[];
  readonly either: readonly string[];
}

/**
 * Zone letters of the United States and its neighbours (common practice, no source). They never reach Intl, which takes
 * EST for a clock that has no summer and AST for Alaska.
 */
export const ZONE_WORDS: readonly ZoneWords[] = [
  row('America/New_York', 'EST', 'EDT', 'ET EASTERN'),
  row('America/Chicago', 'CST', 'CDT', 'CT CENTRAL'),
  row('America/Phoenix', '', '', 'ARIZONA PHOENIX'),
  row('America/Denver', 'MST', 'MDT', 'MT MOUNTAIN'),
  row('America/Los_Angeles', 'PST', 'PDT', 'PT PACIFIC'),
  row('America/Anchorage', 'AKST', 'AKDT', 'AKT ALASKA'),
  row('Pacific/Honolulu', 'HST', '', 'HT HAWAII'),
  row('America/Halifax', 'AST', 'ADT', 'AT ATLANTIC'),
  row('UTC', '', '', 'UTC GMT ZULU'),
];

/** The words of a zone with which a text ends or which follow its time, and the text without them. */
export interface FoundZone {
  readonly words: ZoneWords;
  readonly said: 'standard' | 'daylight' | 'either';
  readonly rest: string;
}

export function findZoneWords(text: string): FoundZone | null {
  for (const words of ZONE_WORDS) {
    for (const said of ['standard', 'daylight', 'either'] as const) {
      for (const word of words[said]) {
        // "AT" is a zone only in capitals and after a time; in "Sat at 2 PM" it is a preposition.
        const flags = word.length <= 2 ? 'u' : 'iu';
        const long = said === 'either' && word.length > 3 ? String.raw`(?:\s+(?:standard|daylight))?(?:\s+time)?` : '';
        const pattern = new RegExp(String.raw`(?<=[\d\sapmAPM.(])\(?\b${word}\b${long}\)?\s*$`, flags);
        const found = pattern.exec(text);
        if (found === null) continue;
        const spoken = /standard/i.test(found[0]) ? 'standard' : /daylight/i.test(found[0]) ? 'daylight' : said;
        return { words, said: spoken, rest: text.slice(0, found.index).trim() };
      }
    }
  }
  return null;
}

function row(name: string, standard: string, daylight: string, either: string): ZoneWords {
  const list = (text: string) => text.split(' ').filter(Boolean);
  return { zone: zone(name), standard: list(standard), daylight: list(daylight), either: list(either) };
}
