import { OWN_WORDS, UTC_WORDS, ZONE_FAMILIES } from '../../domain/close/zone-word-table.ts';

/** Words for a time zone in a text, in the English that the reader of closing times takes. */
export interface ZoneToken {
  readonly zone: string;
  readonly start: number;
  readonly end: number;
}

// French-language Canada names its zones heure normale or avancée de l'Est, du Centre, des Rocheuses, du Pacifique, de
// l'Atlantique, de Terre-Neuve (National Research Council of Canada; from memory).
const FRENCH: Readonly<Record<string, string>> = { E: 'E', C: 'C', R: 'M', P: 'P', A: 'A', T: 'N' };
// How Spanish-language pages in the United States name the zones (common practice, no source).
const PLACES: readonly (readonly [RegExp, string])[] = [
  [/^(?:del )?este$|^l['’]est$/i, 'Eastern'],
  [/^(?:del )?centro$|^du centre$/i, 'Central'],
  [/^(?:de la )?montaña$|^des rocheuses$/i, 'Mountain'],
  [/^(?:del )?pacífico$|^du pacifique$/i, 'Pacific'],
  [/^de l['’]atlantique$/i, 'Atlantic'],
];

const NAMES = 'eastern|central|mountain|pacific|atlantic|newfoundland|alaska|hawaii|arizona';

/** The words of the reader of closing times, the longest first. */
function words(): readonly string[] {
  const all = ZONE_FAMILIES.flatMap(({ plain, standard, daylight }) => [...plain, ...standard, ...daylight]);
  return [...UTC_WORDS, ...OWN_WORDS, ...all].sort((a, b) => b.length - a.length);
}

const PATTERN = new RegExp(
  [
    String.raw`(?<offset>(?:UTC|GMT) ?[+−-]\d{1,2}(?::?\d\d)?)`,
    String.raw`(?<letters>[ECMPAN]\.?[SD]\.?T\b\.?|[ECMP]\.?T\b\.?|AK[SD]T|HST|UTC|GMT)(?![\p{L}\d])`,
    String.raw`H(?<season>[NA])(?<french>[ECRPAT])(?![\p{L}])`,
    String.raw`(?<=\d ?)H(?<always>[ECRP])(?![\p{L}])`,
    String.raw`(?:hora|heure)(?: (?:normale|avancée))? (?<place>(?:del|de la|du|des|de l['’])? ?[\p{L}'’]+)`,
    String.raw`(?<name>${NAMES}|phoenix|denver|boise|chicago|dallas|new york|los angeles)(?<kind> (?:standard|daylight))?(?<time> time)?(?: \([A-Z]{2,4}\))?(?![\p{L}])`,
    String.raw`(?<local>local time|sale time|auction time)`,
    `(?<word>${words().join('|')})(?![\\p{L}\\d])`,
    // Letters that nobody knows stand for a zone all the same: the time that they stand behind is then not known.
    String.raw`(?<=\d ?(?:[ap]\.?m\.? ?)?\(?)(?<unknown>[A-Z]{2,4}T)(?![\p{L}\d])`,
  ].join('|'),
  'giu',
);

/** Every word for a zone, in the order of the text. A city alone is a place and not a zone. */
export function zonesIn(text: string): readonly ZoneToken[] {
  const found: ZoneToken[] = [];
  for (const match of text.matchAll(PATTERN)) {
    const zone = zoneOf(match.groups ?? {});
    const before = text[match.index - 1] ?? '';
    if (zone === '' || /[\p{L}\p{N}]/u.test(before)) continue;
    found.push({ zone, start: match.index, end: match.index + match[0].length });
  }
  return found;
}

function zoneOf(groups: Readonly<Record<string, string | undefined>>): string {
  const { offset, letters, season, french, place, name, kind, time, local, word, unknown, always } = groups;
  if (offset !== undefined) return offset;
  if (letters !== undefined) {
    // Small letters are words: "est", "met", "pat".
    return letters === letters.toUpperCase() ? letters.replaceAll('.', '') : '';
  }
  if (french !== undefined) return `${FRENCH[french] ?? ''}${season === 'A' ? 'D' : 'S'}T`;
  if (always !== undefined) return `${FRENCH[always] ?? ''}T`;
  if (place !== undefined) return PLACES.find(([pattern]) => pattern.test(place.trim()))?.[1] ?? '';
  if (unknown !== undefined) return unknown === unknown.toUpperCase() ? unknown : '';
  if (word !== undefined) return word.length > 5 || word === word.toUpperCase() ? word : '';
  if (local !== undefined) return 'local time';
  if (name === undefined) return '';
  const isCity = !new RegExp(`^(?:${NAMES})$`, 'i').test(name);
  if (isCity && time === undefined) return '';
  return `${name}${kind ?? ''}${kind === undefined ? '' : ' time'}`;
}
