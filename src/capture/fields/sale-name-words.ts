/** Words that sales are named by, beside those of the calendar. */
export const SALE_WORDS =
  /\b(?:sale|auction|event|tender|clearance|clear[- ]?out|close[- ]?out|clear the|block|special|round-?up|disposal|surplus|days?|run|online|lane|fleet|liquidation|dispersal|offering|list|vente|encan|subasta|auktion|versteigerung)\b/i;
/** Days, months, seasons and holidays. */
export const CALENDAR_WORDS =
  /\b(?:mon|tues|wednes|thurs|fri|satur|sun)days?\b|\b(?:weekend|week|midweek|spring|summer|fall|winter|autumn|january|february|march|april|may|june|july|august|september|october|november|december|holiday|thanksgiving|christmas|black friday|labor day|memorial day|new year|year[- ]end|month[- ]end|fin de mois|mid-\p{L}+|samedi|vendredi|sábado|novembre|décembre|noviembre)\b/iu;
/** Words that venues are named by. */
export const VENUE_WORDS =
  /\b(?:exchange|auctions?|block|wholesale|dealers?|market(?:place)?|yards?|desk|disposal|bank|motors|remarketing|sales?|lanes?|lines?|mart|trade|house|company|co|inc|llc|encan|enchères|subastas|auktionen|gmbh|depot|liquidators?|collective|group|auto|board)\b\.?/i;
/** What is no name of either. */
const NO_NAME =
  /\b(?:log ?in|sign|menu|search|help|fees?|rules|my|your|watch ?list|home|contact|photos?|pictures|terms|privacy|cookies?|back|sort|filter|page|results?|lots? \d|lot list|see|click|call|phone|copyright|rights reserved|best viewed|powered|welcome|license|all (?:sales|lots)|sale days|units?|bids?|bidding|current|closes?|ends?|next|last|previous|details|overview|notes|print|share|skip|other|similar|questions?|vehicles?|condition|report|how|when|where|what|why|dashboard|account|settings)\b|[$@?!]|\d{3}[-.]\d{3,4}|https?:/i;

/** A fact of a lot with its label, a VIN, or a place in a lane. */
const FACT =
  /\bno\. ?\d|^(?:vin|chassis|odo(?:meter)?|miles|mileage|year|jahrgang|a[nñ]n?ée|baujahr|lots?|lote|lane|run|item|unit|sale sheet|pricing|price|compare)\b|(?<![\p{L}\d])[A-HJ-NPR-Z0-9]{17}(?![\p{L}\d])|\d,\d{3}|\d{1,2}:\d\d/iu;

/** Whether words can name a venue or a sale: a few of them, with a capital, and none of a menu. */
export function couldBeName(text: string): boolean {
  if (text.length < 4 || text.length > 60 || text.split(' ').length > 8) return false;
  if (!/^[\p{Lu}\d'’“"]|^\p{Ll}+\p{Lu}/u.test(text) && !SALE_WORDS.test(text)) return false;
  if (NO_NAME.test(text) || FACT.test(text) || !/\p{L}{3}/u.test(text)) return false;
  const words = text.split(/[\s-]+/).filter((word) => word.length > 3 && /\p{L}/u.test(word));
  // A name is written large; a sentence is not.
  if (
    words.filter((word) => /^\p{Lu}|^\d/u.test(word)).length < words.length * 0.6 &&
    !/sale|auction|vente|encan|clear/i.test(text)
  )
    return false;
  return !text
    .split(/[\s,]+/)
    .every((word) => CALENDAR_WORDS.test(word) || /^\d+(?:st|nd|rd|th)?$|^(?:AM|PM|and|the)$/i.test(word));
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
