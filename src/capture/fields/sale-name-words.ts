import { MONTH, WEEKDAY } from '../tokens/day-words.ts';

/** Words that sales are named by, beside those of the calendar. */
export const SALE_WORDS =
  /\b(?:sale|auction|event|tender|clearance|clear[- ]?out|close[- ]?out|clear the|block|special|round-?up|disposal|surplus|days?|run|online|lane|fleet|consignment|release|closeouts?|blowout|trade-?ins?|repos?|off-?lease|session|show(?:case)?|parade|drive|harvest|liquidation|dispersal|offering|list|vente|ventes|encan|enchères?|liquidación|remate|subasta|venta|auktion|versteigerung|verkauf)\b/i;
/** Days, months, seasons and holidays. */
export const CALENDAR_WORDS =
  /\b(?:mon|tues|wednes|thurs|fri|satur|sun)days?\b|\b(?:weekend|week|midweek|spring|summer|fall|winter|autumn|january|february|march|april|may|june|july|august|september|october|november|december|holidays?|thanksgiving|christmas|halloween|easter|black friday|labor day|memorial day|independence day|veterans day|new year|morning|evening|noon|midday|night|year[- ]end|month[- ]end|fin de mois|janvier|février|mars|avril|juin|juillet|août|septembre|octobre|lundi|mardi|mercredi|jeudi|dimanche|automne|printemps|hiver|été|enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|octubre|diciembre|lunes|martes|miércoles|jueves|viernes|domingo|otoño|primavera|verano|invierno|montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonntag|herbst|frühjahr|sommer|winter|quarter[- ]end|weekday|mid-\p{L}+|samedi|vendredi|sábado|novembre|décembre|noviembre)\b/iu;
/** Words that make up a date, and no name. */
const DATE_WORDS = new RegExp(`^(?:${MONTH}|${WEEKDAY})$`, 'iu');
/** Words that venues are named by. */
export const VENUE_WORDS =
  /\b(?:exchange|auctions?|block|wholesale|dealers?|market(?:place)?|yards?|desk|disposal|bank|motors|remarketing|remates?|auctioneers?|consignors?|consignment|disposals?|traders?|floor|arena|barn|pavilion|encans|ventes|casa de subastas|sales?|lanes?|lines?|mart|trade|house|company|co|inc|llc|encan|enchères|subastas|auktionen|gmbh|depot|liquidators?|collective|group|auto|board)\b\.?/i;
/** What is no name of either. */
const NO_NAME =
  /\b(?:log ?in|sign|menu|search|help|fees?|rules|my|your|watch ?list|home|contact|photos?|pictures|terms|privacy|cookies?|back|sort|filter|page|results?|lots? \d|lot list|see|click|call|phone|copyright|rights reserved|best viewed|powered|welcome|license|all (?:sales|lots)|sale days|\d+ (?:units?|vehicles?)|bids?|bidding|current|closes?|ends?|next|last|previous|details|overview|notes|print|share|skip|other|similar|questions?|condition|report|how|when|where|what|why|dashboard|account|settings|comparison|compare|today|tomorrow|results?|preview|options|loading|please|welcome|english|español|français|open lots)\b|[$@?!]|\d{3}[-.]\d{3,4}|https?:/i;

/** A fact of a lot with its label, a VIN, or a place in a lane. */
const FACT =
  /\bno\. ?\d|^(?:vin|chassis|odo(?:meter)?|miles|mileage|year(?!-)|jahrgang|a[nñ]n?ée|baujahr|lots?|lote|lane|run|item|unit|sale sheet|pricing|price|compare)\b|(?<![\p{L}\d])[A-HJ-NPR-Z0-9]{17}(?![\p{L}\d])|\d,\d{3}|\d{1,2}:\d\d/iu;

/** Whether words can name a venue or a sale: a few of them, with a capital, and none of a menu. */
export function couldBeName(given: string): boolean {
  // The end of a month or a year is no close.
  const text = given.replace(/\b((?:year|month|week|quarter|season|summer|fall)[- ])ends?\b/i, '$1Finish');
  if (text.length < 4 || text.length > 60 || text.split(' ').length > 8) return false;
  if (!/^[\p{Lu}\d'’“"]|^\p{Ll}+\p{Lu}/u.test(text) && !SALE_WORDS.test(text)) return false;
  if (NO_NAME.test(text) || FACT.test(text) || !/\p{L}{3}/u.test(text)) return false;
  const words = text.split(/[\s-]+/).filter((word) => word.length > 3 && /\p{L}/u.test(word));
  // A name is written large; a sentence is not.
  if (
    words.filter((word) => /^\p{Lu}|^\d/u.test(word)).length < words.length * 0.6 &&
    !/sale|auction|vente|encan|clear/i.test(text) &&
    !/^\p{Lu}\p{L}+ d[ue]l? \p{Ll}+$/iu.test(text)
  )
    return false;
  return !text
    .split(/[\s,]+/)
    .every((word) => DATE_WORDS.test(word) || /^\d+(?:st|nd|rd|th)?$|^(?:AM|PM|and|the|le|el|de|at)$/i.test(word));
}

/** How much of a name the host of the page is made of, 0 to 1: `drywash-exchange.example` is all of Dry Wash Exchange. */
export function shareInHost(name: string, host: string): number {
  const labels = host
    .toLowerCase()
    .replace(/\.[a-z]+$/, '')
    .split('.')
    .sort((a, b) => b.length - a.length);
  const bare = (labels[0] ?? '').replace(/[^a-z0-9]/g, '');
  const words = name
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^a-z0-9 ]/g, '')
    .split(' ')
    .filter((word) => word.length > 2);
  const found = words.filter((word) => bare.includes(word)).reduce((sum, word) => sum + word.length, 0);
  return bare.length < 4 ? 0 : Math.min(1, found / bare.length);
}
