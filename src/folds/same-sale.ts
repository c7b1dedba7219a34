import type { LotFacts } from '../domain/lot/lot.ts';
import { plainWords } from '../domain/text/plain-words.ts';
import { HOUR } from '../domain/time/units.ts';

/** A close that moves by less than this is the same close, told more exactly or put off within the day. */
const HALF_A_DAY = 12 * HOUR;

/**
 * Whether two tellings of one car are the same lot: the one rule for files, pages and typed lots.
 * - Another venue or another sale by name is another lot.
 * - So is a close well after one that has passed: the car was not sold, or its sale was undone, and it is offered again.
 * - Pages of two sites are two lots unless both name the same venue; on one site, another page with another lot number is.
 * - A page that names no close can't bring a closed lot back, unless it is the very page the lot was read from.
 * @param now tells a lot that has closed from one whose close was put off
 */
export function isSameSale(known: LotFacts, next: LotFacts, now: number): boolean {
  const venues = known.venueId !== undefined && next.venueId !== undefined;
  if (venues ? known.venueId !== next.venueId : differs(known.venueName, next.venueName)) return false;
  if (differs(known.sale, next.sale)) return false;
  const pages = comparePages(known.pageUrl, next.pageUrl);
  if (pages === 'other-site' && !(venues || (known.venueName !== undefined && next.venueName !== undefined)))
    return false;
  const closed = known.close !== undefined && known.close.instant < now;
  if (known.close !== undefined && next.close !== undefined) {
    if (closed && next.close.instant - known.close.instant > HALF_A_DAY) return false;
  } else if (closed && pages !== 'same' && pages !== 'unknown') return false;
  return pages !== 'other-page' || !differs(known.lotNumber, next.lotNumber);
}

/** Whether two addresses are of the same page, apart from what only says how one came to it. */
export function isSamePage(a: string | undefined, b: string | undefined): boolean {
  return comparePages(a, b) === 'same';
}

function comparePages(a: string | undefined, b: string | undefined): 'same' | 'other-page' | 'other-site' | 'unknown' {
  const [one, other] = [a, b].map((url) => (url === undefined ? null : URL.parse(url)));
  if (!one || !other) return 'unknown';
  if (one.host !== other.host) return 'other-site';
  return barePage(one) === barePage(other) ? 'same' : 'other-page';
}

function barePage(url: URL): string {
  const query = [...url.searchParams].filter(([name]) => !/^(?:utm_\w+|ref|source|from|gclid|fbclid)$/.test(name));
  // Programs of one page keep their place behind "#/"; any other mark is a place within the page.
  return [url.host, url.pathname, new URLSearchParams(query), url.hash.startsWith('#/') ? url.hash : ''].join(' ');
}

/** Both known and not the same words. */
const differs = (a: string | undefined, b: string | undefined): boolean =>
  a !== undefined && b !== undefined && plainWords(a) !== plainWords(b);
