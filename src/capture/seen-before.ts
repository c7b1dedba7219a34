import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import type { CloseTime } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LotState } from '../journal/lot-state.ts';
import { type DraftFacts, factsOf } from './draft-facts.ts';
import type { DraftLot } from './draft-lot.ts';

/** A fact of a watched lot that the page now states differently, or for the first time. */
export interface ChangedFact {
  readonly field: keyof LotFacts;
  readonly before: LotFacts[keyof LotFacts] | undefined;
  readonly now: LotFacts[keyof LotFacts];
}

/**
 * What the watchlist already knows of a drafted lot:
 * - `new`: nothing;
 * - `same`: this very lot is watched; `changed` is what the page says otherwise now. Nothing is changed by this;
 * - `earlier-life`: the car was watched before, in another sale or at an earlier close; the newest such lot comes first.
 */
export type SeenBefore =
  | { readonly kind: 'new' }
  | { readonly kind: 'same'; readonly lot: LotId; readonly dropped: boolean; readonly changed: readonly ChangedFact[] }
  | { readonly kind: 'earlier-life'; readonly lots: readonly LotId[] };

/** @param readAt when the page was read, which tells a lot that has closed from one that was put off */
export function compareWithWatched(draft: DraftLot, lots: readonly LotState[], readAt: Instant): SeenBefore {
  const { facts } = factsOf(draft, { venues: [], titles: [] });
  const alike = lots.filter((lot) => isSameCar(facts, lot.facts));
  const same = alike.filter((lot) => isSameSale(facts, lot.facts, readAt)).sort(newestFirst)[0];
  if (same !== undefined) {
    return { kind: 'same', lot: same.id, dropped: same.dropped, changed: changes(same.facts, facts) };
  }
  const earlier = alike.filter((lot) => facts.vin !== undefined && lot.facts.vin === facts.vin).sort(newestFirst);
  return earlier.length === 0 ? { kind: 'new' } : { kind: 'earlier-life', lots: earlier.map((lot) => lot.id) };
}

const newestFirst = (a: LotState, b: LotState): number => b.addedAt - a.addedAt;

type Facts = DraftFacts['facts'];

/** The VIN decides. Without one on either side, the same page and lot number do. */
function isSameCar(now: Facts, watched: LotFacts): boolean {
  if (now.vin !== undefined && watched.vin !== undefined) return now.vin === watched.vin;
  return isSamePage(now, watched) && now.lotNumber === watched.lotNumber;
}

function isSameSale(now: Facts, watched: LotFacts, readAt: Instant): boolean {
  if (differs(now.venueName, watched.venueName) || differs(now.sale, watched.sale)) return false;
  if (now.close !== undefined && watched.close !== undefined) {
    if (closeDay(now.close) === closeDay(watched.close)) return !differs(now.lotNumber, watched.lotNumber);
    // Another day: put off if it had not closed yet and stands on the same page, else offered again.
    return watched.close.instant > readAt && isSamePage(now, watched);
  }
  if (watched.close !== undefined && watched.close.instant <= readAt) return isSamePage(now, watched);
  return isSamePage(now, watched) || (isSameHost(now, watched) && !differs(now.lotNumber, watched.lotNumber));
}

/** Both known and not the same words. */
function differs(a: string | undefined, b: string | undefined): boolean {
  return a !== undefined && b !== undefined && a.trim().toLowerCase() !== b.trim().toLowerCase();
}

/** The calendar day of the close where the sale is. */
function closeDay(close: CloseTime): string {
  return new Intl.DateTimeFormat('en-CA', { timeZone: close.zone, dateStyle: 'short' }).format(close.instant);
}

function isSamePage(now: Facts, watched: LotFacts): boolean {
  return (
    now.pageUrl !== undefined && watched.pageUrl !== undefined && bareUrl(now.pageUrl) === bareUrl(watched.pageUrl)
  );
}

function isSameHost(now: Facts, watched: LotFacts): boolean {
  const host = (url: string | undefined) => (url === undefined ? '' : (URL.parse(url)?.host ?? ''));
  return host(now.pageUrl) !== '' && host(now.pageUrl) === host(watched.pageUrl);
}

/** Without what only says how one came to the page. */
function bareUrl(url: string): string {
  const parsed = URL.parse(url);
  if (parsed === null) return url;
  const query = [...parsed.searchParams].filter(([name]) => !/^(?:utm_\w+|ref|source|from|gclid|fbclid)$/.test(name));
  parsed.search = new URLSearchParams(query).toString();
  if (!parsed.hash.startsWith('#/')) parsed.hash = '';
  return parsed.href;
}

function changes(before: LotFacts, now: Facts): readonly ChangedFact[] {
  return (Object.keys(now) as (keyof Facts)[]).flatMap((field): ChangedFact[] => {
    const value = now[field];
    if (value === undefined || field === 'pageUrl' || isSameFact(field, before[field], value)) return [];
    return [{ field, before: before[field], now: value }];
  });
}

function isSameFact(
  field: keyof LotFacts,
  before: LotFacts[keyof LotFacts] | undefined,
  now: LotFacts[keyof LotFacts],
): boolean {
  if (field === 'close') return (before as CloseTime | undefined)?.instant === (now as CloseTime).instant;
  if (typeof before === 'string' && typeof now === 'string') return !differs(before, now);
  return before === now;
}
