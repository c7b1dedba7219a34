/** States of the United States and provinces of Canada: postal letters and names (USPS Publication 28; Canada Post). */
const STATES =
  'AL Alabama|AK Alaska|AZ Arizona|AR Arkansas|CA California|CO Colorado|CT Connecticut|DE Delaware|DC District of Columbia|FL Florida|GA Georgia|HI Hawaii|ID Idaho|IL Illinois|IN Indiana|IA Iowa|KS Kansas|KY Kentucky|LA Louisiana|ME Maine|MD Maryland|MA Massachusetts|MI Michigan|MN Minnesota|MS Mississippi|MO Missouri|MT Montana|NE Nebraska|NV Nevada|NH New Hampshire|NJ New Jersey|NM New Mexico|NY New York|NC North Carolina|ND North Dakota|OH Ohio|OK Oklahoma|OR Oregon|PA Pennsylvania|PR Puerto Rico|RI Rhode Island|SC South Carolina|SD South Dakota|TN Tennessee|TX Texas|UT Utah|VT Vermont|VA Virginia|WA Washington|WV West Virginia|WI Wisconsin|WY Wyoming|AB Alberta|BC British Columbia|MB Manitoba|NB New Brunswick|NL Newfoundland and Labrador|NS Nova Scotia|ON Ontario|PE Prince Edward Island|QC Québec|QC Quebec|SK Saskatchewan|NL Newfoundland';

const LETTERS = [...new Set(STATES.split('|').map((state) => state.slice(0, 2)))];
const NAMES = STATES.split('|').map((state) => state.slice(3));
const STATE = `(?:${LETTERS.join('|')}|${NAMES.map((name) => `${name}|${name.toUpperCase()}`).join('|')}|N\\.-B\\.|N\\.-É\\.|T\\.-N\\.-L\\.|N\\.B\\.|N\\.S\\.)`;
const PROPER = String.raw`(?:(?:St|Ste|Ft|Mt)\.|\p{Lu}[\p{L}'’-]+)`;
const WORD = String.raw`(?:${PROPER}|de|la|le|les|du|of|sur)`;
// A town is one to four words with a capital; before it may stand a street, which is left out.
const PLACE = new RegExp(
  String.raw`(?<![\p{L}\d])(?<town>${PROPER}(?: ${WORD}){0,3}),? \(?(?<state>${STATE})\)?(?<zip> \d{5}(?:-\d{4})?)?(?![\p{L}\d])`,
  'gu',
);

export interface PlaceToken {
  /** "Casa Grande, AZ", as the page words it. */
  readonly place: string;
  readonly start: number;
  readonly end: number;
}

/** Towns with their state or province, in the order of the text; the comma between is demanded unless `loose`. */
export function placesIn(text: string, loose = false): readonly PlaceToken[] {
  const found: PlaceToken[] = [];
  for (const match of text.slice(0, 1000).matchAll(PLACE)) {
    const { town = '', state = '', zip = '' } = match.groups ?? {};
    const between = match[0].slice(town.length, match[0].length - zip.length - state.length);
    if (!loose && !between.includes(',') && !between.includes('(')) continue;
    // "Title: MD" and "Runs OK" are no towns.
    if (
      /^(?:Title|Clear|Clean|Runs|Salvage|Rebuilt|Lot|Lane|Sat|Sun|Mon|Tue|Wed|Thu|Fri|Zone|Drives?|Ends?|Ending|Close[sd]?|Closing|Times?|Hammer|Hours?|AM|PM|In|At|Of|From|The)$/i.test(
        town.split(' ').at(-1) ?? '',
      )
    )
      continue;
    const end = match.index + match[0].length - zip.length;
    found.push({ place: opened(text.slice(match.index, end), text[end]), start: match.index, end });
  }
  return found;
}

/** The bracket around a province belongs to the place as the page words it. */
const opened = (place: string, next: string | undefined): string =>
  place.includes('(') && !place.endsWith(')') && next === ')'
    ? `${place})`
    : place.includes('(')
      ? place
      : place.replace(/\)$/, '');

const FIXED: readonly (readonly [RegExp, string])[] = [
  [/\b(?:AZ|Arizona)\b/i, 'America/Phoenix'],
  [/\b(?:SK|Saskatchewan)\b/, 'America/Regina'],
  [/\b(?:HI|Hawaii)\b/, 'Pacific/Honolulu'],
  [/\b(?:PR|Puerto Rico)\b/, 'America/Puerto_Rico'],
];

/** The zone of places that keep one time all year, where its letters mean another thing than elsewhere; undefined for all others. */
export const zoneOfPlace = (place: string): string | undefined => FIXED.find(([pattern]) => pattern.test(place))?.[1];
