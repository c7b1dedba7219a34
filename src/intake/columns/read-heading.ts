import { plainWords } from '../../domain/text/plain-words.ts';
import { COLUMN_FIELDS, type ColumnFieldId } from './column-fields.ts';

/** A heading that names a field: with the very words, or with more words around them. */
export interface HeadingMatch {
  readonly field: ColumnFieldId;
  readonly exact: boolean;
}

/** Words that say nothing about which field it is. */
const FILLERS = new Set([
  'the',
  'of',
  'in',
  'at',
  'est',
  'estimated',
  'your',
  'usd',
  'us',
  'dollars',
  'amount',
  'value',
]);

/** Headings are looked up in a Map, so that one called "__proto__" is a heading like any other. */
const FIELD_BY_WORDS = new Map<string, ColumnFieldId>(
  COLUMN_FIELDS.flatMap(({ id, label, words }) =>
    [label, ...words.split('; ')].map((wording): [string, ColumnFieldId] => [headingWords(wording), id]),
  ).filter(([wording]) => wording !== ''),
);
/** Longest first: "current bid" must win over "bid". */
const LONGER_WORDS = [...FIELD_BY_WORDS]
  .filter(([words]) => words.length > 3)
  .sort((a, b) => b[0].length - a[0].length);

/**
 * Which field a heading names, read loosely: "Odometer_Reading", "LOT #", "closeTime (ET)". Null when it names none, or
 * is too long to be a heading.
 */
export function readHeading(heading: string): HeadingMatch | null {
  if (heading.length > 200) return null;
  const words = headingWords(heading);
  const exact =
    FIELD_BY_WORDS.get(words) ?? FIELD_BY_WORDS.get(headingWords(heading.replace(/\([^)]*\)|\[[^\]]*\]/g, ' ')));
  if (exact !== undefined) return { field: exact, exact: true };
  const bare = words
    .split(' ')
    .filter((word) => !FILLERS.has(word))
    .join(' ');
  const almost = FIELD_BY_WORDS.get(bare);
  if (almost !== undefined) return { field: almost, exact: true };
  // Someone's own limit is never the price: "max bid" would otherwise be taken for a bid that stands.
  if (/\b(?:max|my|plan(?:ned)?|reserve|start(?:ing)?|opening|buy|fee|next|minimum|floor)\b/.test(words)) return null;
  // The last words of a heading say what it is about: "seller notes" are notes.
  const inside =
    LONGER_WORDS.find(([wording]) => ` ${bare}`.endsWith(` ${wording}`)) ??
    LONGER_WORDS.find(([wording]) => ` ${bare} `.includes(` ${wording} `));
  return inside === undefined ? null : { field: inside[1], exact: false };
}

/** Zone letters in a heading such as "Ends (ET)" or "Close Time - Mountain" hold for every cell under it. */
export function zoneInHeading(heading: string): string | null {
  if (heading.length > 200) return null;
  const letters =
    /(?:\(|\[|\s|[-–,/])\s*((?:[ECMP]|AK|H)[SD]?T|AZ|UTC|GMT|(?:Eastern|Central|Mountain|Pacific|Arizona)(?:\s+(?:Standard\s+|Daylight\s+)?Time)?)\s*[)\]]?\s*$/i;
  return letters.exec(heading)?.[1] ?? null;
}

/** "closeTime", "Close_Time" and "CLOSE TIME" are the same words; "#" is "no". */
function headingWords(heading: string): string {
  return plainWords(heading.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2').replace(/#/g, ' no '));
}
