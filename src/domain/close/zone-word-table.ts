/**
 * How people and pages write zones, North America's and those of the commonest sales abroad. Abbreviations never reach
 * Intl: it takes EST for a fixed offset even in July, CST for Chicago with daylight saving, AST for Alaska, and refuses
 * EDT.
 */
export interface ZoneFamily {
  readonly zone: string;
  /** Words for whatever its clocks show that day. Lower case. */
  readonly plain: readonly string[];
  /** Words for standard time, and how many minutes that is ahead of UTC. */
  readonly standard: readonly string[];
  readonly standardMinutes: number;
  /** Words for daylight-saving time, an hour further ahead. */
  readonly daylight: readonly string[];
  /** A place that keeps this family's standard time all year, so that its letters can mean that too. */
  readonly fixedZone?: string;
}

const family = (zone: string, hours: number, name: string, letter: string, fixedZone?: string): ZoneFamily => ({
  zone,
  // "At 2 PM" is no zone: Atlantic time has no two-letter word.
  plain: [`${name} time`, name, ...(letter === 'a' ? [] : [`${letter}t`])],
  standard: [`${name} standard time`, `${name} standard`, `${letter}st`],
  standardMinutes: hours * 60,
  daylight: [
    `${name} daylight savings time`,
    `${name} daylight saving time`,
    `${name} daylight time`,
    `${name} daylight`,
    `${letter}dt`,
  ],
  ...(fixedZone === undefined ? {} : { fixedZone }),
});

/** Letters that are used for one zone only: IST, which is said in India, Ireland and Israel, is left out on purpose. */
const abroad = (
  zone: string,
  standardMinutes: number,
  standard: readonly string[],
  ...daylight: string[]
): ZoneFamily => ({ zone, plain: [], standard, standardMinutes, daylight });

/** Common practice, no source; the offsets are those of the tz database. */
export const ZONE_FAMILIES: readonly ZoneFamily[] = [
  family('America/New_York', -5, 'eastern', 'e'),
  family('America/Chicago', -6, 'central', 'c'),
  family('America/Denver', -7, 'mountain', 'm', 'America/Phoenix'),
  family('America/Los_Angeles', -8, 'pacific', 'p'),
  family('America/Anchorage', -9, 'alaska', 'ak'),
  family('America/Halifax', -4, 'atlantic', 'a', 'America/Puerto_Rico'),
  family('America/St_Johns', -3.5, 'newfoundland', 'n'),
  {
    zone: 'Pacific/Honolulu',
    plain: [],
    standard: ['hawaii standard time', 'hawaii-aleutian standard time', 'hst'],
    standardMinutes: -600,
    // There is no such thing, and it is written all the same.
    daylight: ['hawaii daylight time', 'hdt'],
  },
  abroad('Europe/London', 0, [], 'bst'),
  abroad('Europe/Berlin', 60, ['cet', 'mez'], 'cest', 'mesz'),
  abroad('Australia/Sydney', 600, ['aest'], 'aedt'),
  abroad('Australia/Adelaide', 570, ['acst'], 'acdt'),
  abroad('Australia/Perth', 480, ['awst']),
  abroad('Pacific/Auckland', 720, ['nzst'], 'nzdt'),
  abroad('Asia/Tokyo', 540, ['jst']),
];

/** Words for UTC itself. */
export const UTC_WORDS: readonly string[] = ['utc', 'gmt', 'zulu', 'greenwich mean time', 'coordinated universal time'];

/** Words for the clock at the sale. */
export const LOCAL_WORDS: readonly string[] = ['local time', 'local', 'auction time', 'sale time'];

/** Words for the reader's own clock. */
export const OWN_WORDS: readonly string[] = ['your time', 'your local time', 'store time'];

const EAST = 'America/New_York';
const CENTRAL = 'America/Chicago';
const MOUNTAIN = 'America/Denver';
const WEST = 'America/Los_Angeles';

/**
 * Places that are named instead of a zone, and the clocks that are kept there; where a state has two, nobody can tell which
 * without knowing more. By the tz database.
 */
export const PLACES: Readonly<Record<string, readonly string[]>> = {
  arizona: ['America/Phoenix'],
  phoenix: ['America/Phoenix'],
  tucson: ['America/Phoenix'],
  az: ['America/Phoenix'],
  hawaii: ['Pacific/Honolulu'],
  honolulu: ['Pacific/Honolulu'],
  'puerto rico': ['America/Puerto_Rico'],
  'san juan': ['America/Puerto_Rico'],
  anchorage: ['America/Anchorage'],
  'new york': [EAST],
  chicago: [CENTRAL],
  denver: [MOUNTAIN],
  'los angeles': [WEST],
  california: [WEST],
  indiana: ['America/Indiana/Indianapolis', CENTRAL],
  indianapolis: ['America/Indiana/Indianapolis'],
  tennessee: [CENTRAL, EAST],
  nashville: [CENTRAL],
  memphis: [CENTRAL],
  knoxville: [EAST],
  kentucky: [EAST, CENTRAL],
  louisville: ['America/Kentucky/Louisville'],
  florida: [EAST, CENTRAL],
  miami: [EAST],
  orlando: [EAST],
  tampa: [EAST],
  michigan: ['America/Detroit', CENTRAL],
  detroit: ['America/Detroit'],
  kansas: [CENTRAL, MOUNTAIN],
  nebraska: [CENTRAL, MOUNTAIN],
  omaha: [CENTRAL],
  'north dakota': [CENTRAL, MOUNTAIN],
  'south dakota': [CENTRAL, MOUNTAIN],
  idaho: ['America/Boise', WEST],
  boise: ['America/Boise'],
  oregon: [WEST, 'America/Boise'],
  portland: [WEST],
  texas: [CENTRAL],
  dallas: [CENTRAL],
  houston: [CENTRAL],
  'san antonio': [CENTRAL],
  'el paso': [MOUNTAIN],
  nevada: [WEST],
  'las vegas': [WEST],
  'salt lake city': [MOUNTAIN],
  utah: [MOUNTAIN],
  colorado: [MOUNTAIN],
  'new mexico': [MOUNTAIN],
  albuquerque: [MOUNTAIN],
  wyoming: [MOUNTAIN],
  montana: [MOUNTAIN],
  seattle: [WEST],
  'san francisco': [WEST],
  'san diego': [WEST],
  sacramento: [WEST],
  'kansas city': [CENTRAL],
  'st louis': [CENTRAL],
  'saint louis': [CENTRAL],
  minneapolis: [CENTRAL],
  minnesota: [CENTRAL],
  wisconsin: [CENTRAL],
  milwaukee: [CENTRAL],
  illinois: [CENTRAL],
  iowa: [CENTRAL],
  missouri: [CENTRAL],
  arkansas: [CENTRAL],
  oklahoma: [CENTRAL],
  louisiana: [CENTRAL],
  mississippi: [CENTRAL],
  alabama: [CENTRAL],
  atlanta: [EAST],
  ohio: [EAST],
  pennsylvania: [EAST],
  philadelphia: [EAST],
  boston: [EAST],
  charlotte: [EAST],
  'new jersey': [EAST],
  'north carolina': [EAST],
  'south carolina': [EAST],
  massachusetts: [EAST],
  connecticut: [EAST],
  maryland: [EAST],
  toronto: ['America/Toronto'],
  ontario: ['America/Toronto'],
  montreal: ['America/Toronto'],
  quebec: ['America/Toronto'],
  winnipeg: ['America/Winnipeg'],
  saskatchewan: ['America/Regina'],
  regina: ['America/Regina'],
  calgary: ['America/Edmonton'],
  edmonton: ['America/Edmonton'],
  alberta: ['America/Edmonton'],
  vancouver: ['America/Vancouver'],
};
