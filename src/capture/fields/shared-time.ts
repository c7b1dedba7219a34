import { weighWords } from '../roles/role-words.ts';
import { TIME_LABELS } from '../roles/time-roles.ts';
import { clauseBefore } from '../text/clause.ts';
import type { Line } from '../text/lines.ts';
import { isInSellersWords } from '../text/sellers-words.ts';
import { type MomentToken, momentsIn } from '../tokens/moment-tokens.ts';
import { zonesIn } from '../tokens/zone-tokens.ts';

/** What the page says once for the times of several lots, or for all of them. */
export interface SharedTime {
  /** A day on which the sale is held; null when none is said. */
  readonly day: MomentToken | null;
  /** Zone words that hold for times without any; empty when none are said. */
  readonly zone: string;
  /** The time at which the first lot ends, which tells morning from afternoon. */
  readonly first: MomentToken | null;
}

const SPEAKS_OF_TIMES =
  /\b(?:times?|clocks?|hours?|zone|heures?|horas?|uhrzeiten|zeiten|all|toutes|todas|closes?|closings?|ends?)\b/i;
const MOST_LINES = 400;

/** @param lines the text nearest to the lot first */
export function sharedTime(lines: readonly Line[], language: string): SharedTime {
  let [day, first]: [MomentToken | null, MomentToken | null] = [null, null];
  let zone = '';
  for (const line of lines.slice(0, MOST_LINES)) {
    if (line.text.length > 700 || isInSellersWords(line.text)) continue;
    const told = timesOf(line, language);
    day ??= told.day;
    first ??= told.first;
    if (zone === '') zone = told.zone;
    if (day !== null && zone !== '' && first !== null) break;
  }
  return { day, zone, first };
}

/** What each line says of times; hundreds of lots ask the same lines. */
const toldBy = new WeakMap<Line, SharedTime>();

function timesOf(line: Line, language: string): SharedTime {
  const known = toldBy.get(line);
  if (known !== undefined) return known;
  const { text } = line;
  const mine = momentsIn(text, language).filter((moment) => !isOther(text, moment));
  const told: SharedTime = {
    day: mine.find((moment) => moment.date !== null && isADay(moment)) ?? null,
    first: mine.find((moment) => moment.clock !== null && !moment.clock.half) ?? null,
    zone: mine.find((moment) => moment.zone !== '')?.zone ?? statedZone(text),
  };
  toldBy.set(line, told);
  return told;
}

/** `All times Central`, `Times are Mountain`, `All times are shown in ET`; two zones in one line say nothing. */
export function statedZone(text: string): string {
  const zones = new Set(zonesIn(text).map((token) => token.zone.toUpperCase()));
  const zone = oneZone([...zones]);
  return zone !== '' && SPEAKS_OF_TIMES.test(text) ? zone : '';
}

/** `heure normale de l'Atlantique (HNA)` says one zone twice: the letters are the more exact. Empty where two differ. */
function oneZone(zones: readonly string[]): string {
  const families = new Set(zones.map((zone) => FAMILY.exec(zone)?.[0] ?? zone));
  const [exact = ''] = zones.toSorted((a, b) => exactness(b) - exactness(a));
  return families.size === 1 ? exact : '';
}

const FAMILY = /^[ECMPAN](?=[SD]?T$|ASTERN|ENTRAL|OUNTAIN|ACIFIC|TLANTIC|EWFOUNDLAND)/;
const exactness = (zone: string): number =>
  /^[A-Z]{1,2}[SD]T$/.test(zone) ? 2 : /STANDARD|DAYLIGHT/.test(zone) ? 1 : 0;

const isADay = ({ date }: MomentToken): boolean =>
  date !== null && (date.date !== '' || date.weekday !== '') && !date.guessed;

/** The page was printed, updated or last sold then; that is no day of this sale. */
function isOther(text: string, moment: MomentToken): boolean {
  const before = clauseBefore(text.slice(0, moment.start));
  const after = text.slice(moment.end, moment.end + 30);
  return (weighWords(before, OTHER_ONLY).get('other') ?? 0) > 0.9 || /^\s*(?:results|prices)/i.test(after);
}
const OTHER_ONLY = TIME_LABELS.filter(({ role, words }) => role === 'other' && !/sale \(\?:date/.test(words.source));
