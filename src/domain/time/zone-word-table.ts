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

const family = (
  zone: string,
  hours: number,
  name: string,
  letter: string,
  more: Partial<ZoneFamily> = {},
): ZoneFamily => ({
  zone,
  // "At 2 PM" is no zone: Atlantic time has no two-letter word.
  plain: [`${name} time`, name, ...(letter === 'a' ? [] : [`${letter}t`]), ...(more.plain ?? [])],
  standard: [`${name} standard time`, `${letter}st`, ...(more.standard ?? [])],
  standardMinutes: hours * 60,
  daylight: [`${name} daylight savings time`, `${name} daylight saving time`, `${name} daylight time`, `${letter}dt`],
  ...(more.fixedZone === undefined ? {} : { fixedZone: more.fixedZone }),
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
  family('America/New_York', -5, 'eastern', 'e', { plain: ['new york time', 'new york'] }),
  family('America/Chicago', -6, 'central', 'c', { plain: ['chicago time', 'chicago', 'texas time'] }),
  family('America/Denver', -7, 'mountain', 'm', { plain: ['denver time', 'denver'], fixedZone: 'America/Phoenix' }),
  family('America/Los_Angeles', -8, 'pacific', 'p', { plain: ['california time', 'los angeles time', 'los angeles'] }),
  family('America/Anchorage', -9, 'alaska', 'ak', { plain: ['anchorage'] }),
  family('America/Halifax', -4, 'atlantic', 'a', { fixedZone: 'America/Puerto_Rico' }),
  family('America/St_Johns', -3.5, 'newfoundland', 'n'),
  {
    zone: 'Pacific/Honolulu',
    plain: ['hawaii time', 'hawaii', 'honolulu'],
    standard: ['hawaii standard time', 'hawaii-aleutian standard time', 'hst'],
    standardMinutes: -600,
    daylight: [],
  },
  {
    zone: 'America/Phoenix',
    plain: ['arizona time', 'arizona', 'phoenix time', 'phoenix'],
    standard: ['arizona mst', 'mst arizona', 'mst (arizona)', 'mst az', 'phoenix mst', 'mst phoenix', 'mst (phoenix)'],
    standardMinutes: -420,
    daylight: [],
  },
  {
    zone: 'America/Puerto_Rico',
    plain: ['puerto rico time', 'puerto rico'],
    standard: [],
    standardMinutes: -240,
    daylight: [],
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
