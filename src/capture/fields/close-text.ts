import type { Line } from '../text/lines.ts';

const MONTH =
  /\b(?:jan|feb|mar|apr|may|jun|jul|aug|sept?|oct|nov|dec|january|february|march|april|june|july|august|september|october|november|december|enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|octubre|noviembre|diciembre|janv|févr|mars|avril|mai|juin|juil|août|sept|déc|janvier|février|juillet|septembre|octobre|novembre|décembre|januar|februar|märz|juni|juli|oktober|dezember)\b/i;
const DAY_WORD = /\b(?:today|tonight|tomorrow|(?:mon|tue|tues|wed|wednes|thu|thur|thurs|fri|sat|satur|sun)(?:day)?)\b/i;
const NUMERIC_DATE = /\b\d{1,4}[/.-]\d{1,2}(?:[/.-]\d{2,4})?\b/;
const CLOCK = /\b\d{1,2}[:h.]\d{2}\b|\b\d{1,2} ?[ap]\.?m\b/i;

/** Whether a text names a day. */
export const datePart = (text: string): boolean => MONTH.test(text) || DAY_WORD.test(text) || NUMERIC_DATE.test(text);

/** Whether a text names a time of day. */
export const timePart = (text: string): boolean => CLOCK.test(text);

const UNIT = String.raw`(?:d|days?|h|hrs?|hours?|m|mins?|minutes?|s|secs?|seconds?|j|jours?|tage?|std|stunden?|días?|horas?|minutos?)\b\.?`;
const COUNTDOWN = new RegExp(
  String.raw`^(?:in |en |dans )?\d{1,3} ?${UNIT}(?:[ ,:]*(?:and )?\d{1,3} ?${UNIT}){0,3}(?: left| remaining| to go)?$`,
  'i',
);
const CLOCK_DOWN = /^(?:(\d{1,3}) ?d(?:ays?)?,? )?(\d{1,3}):(\d{2}):(\d{2})$/i;

/** A clock that runs down, `1d 02:13:45`, written with units; "13:45" alone could be hours or minutes and is left. */
export function withUnits(text: string): string {
  const parts = CLOCK_DOWN.exec(text.replace(/\s+/g, ' ').trim());
  if (parts === null) return text;
  const [, days = '0', hours, minutes, seconds] = parts;
  return `${days}d ${hours}h ${minutes}m ${seconds}s`;
}

/** Time still to go, told to the minute at least: "in three days" is no closing time. */
export function isCountdown(text: string): boolean {
  const bare = text.replace(/\s+/g, ' ').trim();
  return COUNTDOWN.test(bare) && /\d ?(?:m|mins?|minutes?|minutos?|s|secs?|seconds?)\b/i.test(bare);
}

const PHRASE =
  /^(?:(?:this |the )?(?:online |live )?(?:bidding|auction|sale|lot|lot \S{1,12}|all lots|everything))\s+(?:on this lot |for this lot |in this sale )?(?:closes?|ends?|will close|will end|closing|ending|is scheduled to (?:close|end)|open until)\s*:?\s*(?:on |at |in )?(.{4,80})$/i;
const ENDS_BEFORE = /^(.{4,60}?)\s+(?:closing|close|end|ending)(?: time)?\.?$/i;

/** The time in `Bidding closes Monday, November 30, 8:00 PM Eastern`; null when a line does not say when bidding ends. */
export function closePhrase(text: string): string | null {
  if (text.length > 300) return null;
  for (const sentence of text.split(/(?<=(?:[\p{L}]{2}|[\d)%])[.!])\s+(?=\p{Lu})|(?<=\p{Ll}{2}[.!])\s/u)) {
    const found = (PHRASE.exec(sentence)?.[1] ?? ENDS_BEFORE.exec(sentence)?.[1])?.replace(/[.!]$/, '');
    if (found !== undefined && (datePart(found) || isCountdown(found)) && (timePart(found) || isCountdown(found)))
      return found;
  }
  return null;
}

const ZONE_STATEMENT =
  /\b(?:all )?(?:times?|closing times?|dates and times)\b[^.\n]{0,30}?\b(?:are|is|shown|displayed|listed|given|stated)\b[^.\n]{0,30}?\b(eastern|central|mountain|pacific|E[SD]?T|C[SD]?T|M[SD]?T|P[SD]?T|UTC|GMT|Arizona)\b/i;

/** The zone that a page says all its times are in, as it says it; empty when it does not, or says two. */
export function zoneStatement(lines: readonly Line[]): string {
  const zones = new Set(
    lines.flatMap((line) => {
      const zone = line.text.length > 300 ? undefined : ZONE_STATEMENT.exec(line.text)?.[1];
      return zone === undefined ? [] : [zone.toUpperCase()];
    }),
  );
  const [zone] = zones;
  return zone === undefined || zones.size > 1
    ? ''
    : zone.length <= 4
      ? zone
      : `${zone.charAt(0)}${zone.slice(1).toLowerCase()}`;
}

const ZONE = /\b(?:[ECMPH][SD]?T|AK[SD]T|UTC|GMT|eastern|central|mountain|pacific|arizona)\b|\dZ$|[+-]\d{2}:?\d{2}$/i;
const ZONE_LETTERS = /\b(?:[A-Z]{1,3}[SD]T|C[ES]T|CEST|MES?Z)\b/;

/** Whether a time says its own zone. */
export const namesZone = (text: string): boolean => ZONE.test(text) || ZONE_LETTERS.test(text);

const EUROPEAN_DATE = /(?<![\d./-])(\d{1,2})([./-])(\d{1,2})\2(\d{4})(?![\d/-])/;
// French-language Canada names its zones heure de l'Est, du Centre, des Rocheuses, du Pacifique, normale or avancée.
const FRENCH_ZONES: Readonly<Record<string, string>> = { E: 'E', C: 'C', R: 'M', P: 'P' };
const DAY_FIRST_LANGUAGES = /^(?:es|fr|de|it|pt|nl|pl|sv|da|nb|no|ar|he|en-(?:GB|AU|NZ|IE|IN|ZA))\b/i;

export interface TidyTime {
  readonly text: string;
  /** Which of two numbers is the day was taken from the page's language only. */
  readonly guessed: boolean;
}

/** Dates with the day first, and zones in French, as the reader of closing times takes them. */
export function tidyTime(text: string, language: string): TidyTime {
  let guessed = false;
  const dated = text.replace(EUROPEAN_DATE, (whole, first: string, mark: string, second: string, year: string) => {
    const dayFirst =
      mark === '.' || Number(first) > 12 || DAY_FIRST_LANGUAGES.test(language.replace(/^(es|fr)-US$/i, 'en'));
    if (!dayFirst || Number(second) > 12 || Number(first) > 31) return whole;
    if (mark !== '.' && Number(first) <= 12 && first !== second) guessed = true;
    return `${year}-${second.padStart(2, '0')}-${first.padStart(2, '0')}`;
  });
  const zoned = dated.replace(/(?<=\d ?)\bH([NA]?)([ECRP])\b/, (_, season: string, zone: string) => {
    const letter = FRENCH_ZONES[zone] ?? zone;
    return `${letter}${season === '' ? '' : season === 'N' ? 'S' : 'D'}T`;
  });
  const timed = inEnglish(zoned)
    .replace(/\b(\d{1,2}) ?h ?(\d{2})\b(?! ?m)/, '$1:$2')
    .replace(/(?<=:\d\d) ?(?:Uhr|hrs|horas)\b/i, '')
    .replace(/(\d{4}-\d\d-\d\d),/, '$1');
  return { text: timed, guessed };
}

const SPANISH_MONTHS: readonly string[] = [
  'enero',
  'febrero',
  'marzo',
  'abril',
  'mayo',
  'junio',
  'julio',
  'agosto',
  'septiembre',
  'octubre',
  'noviembre',
  'diciembre',
];
const SPANISH_DATE = new RegExp(String.raw`\b(\d{1,2}) de (${SPANISH_MONTHS.join('|')})(?: del?)? (\d{4})\b`, 'i');
// How Spanish-language pages in the United States name the zones (common practice, no source).
const SPANISH_ZONES: Readonly<Record<string, string>> = { este: 'ET', centro: 'CT', montaña: 'MT', pacífico: 'PT' };

/** `28 de noviembre de 2026, 3:00 p. m., hora del centro` as `2026-11-28 3:00 pm CT`. */
function inEnglish(text: string): string {
  return text
    .replace(SPANISH_DATE, (_, day: string, month: string, year: string) => {
      const at = SPANISH_MONTHS.indexOf(month.toLowerCase()) + 1;
      return `${year}-${String(at).padStart(2, '0')}-${day.padStart(2, '0')}`;
    })
    .replace(/(?<=\d) ?([ap])\. ?m\./i, ' $1m')
    .replace(/,? ?\bhora (?:del |de la )?(este|centro|montaña|pacífico)(?!\p{L})/iu, (_, zone: string) => {
      return ` ${SPANISH_ZONES[zone.toLowerCase()] ?? ''}`;
    });
}
