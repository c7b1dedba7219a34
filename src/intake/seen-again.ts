import type { LotFacts, LotField, LotId } from '../domain/lot/lot.ts';
import { plainWords } from '../domain/setup/plain-words.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LotState } from '../journal/lot-state.ts';
import { isSameFact } from './same-fact.ts';

/** What a row says otherwise than is known already. */
export interface FactChange {
  readonly field: LotField;
  readonly before: LotFacts[LotField] | undefined;
  readonly after: LotFacts[LotField];
  /** Whether an update takes it. What the buyer has put in himself is not replaced by a file. */
  readonly taken: boolean;
}

/**
 * That the car of a row has been seen:
 * - `watched`: this very lot is on the watchlist, or was and has been dropped;
 * - `in-file`: an earlier row of the same file is the same lot;
 * - `another-sale`: the car was watched in an earlier or another sale, so this is a new lot of the same car.
 */
export type SeenAgain =
  | {
      readonly kind: 'watched';
      readonly lot: LotId;
      readonly dropped: boolean;
      readonly changes: readonly FactChange[];
    }
  | { readonly kind: 'in-file'; readonly row: number; readonly changes: readonly FactChange[] }
  | { readonly kind: 'another-sale'; readonly lot: LotId };

/** Facts that the sale decides, and that a newer file therefore knows better. */
const SALE_DECIDES: ReadonlySet<LotField> = new Set([
  'close',
  'increment',
  'lotNumber',
  'venueId',
  'venueName',
  'sale',
  'seller',
  'location',
  'pageUrl',
]);

/** A close that moves by less than this is the same close, told more exactly or put off within the day. */
const HALF_A_DAY = 12 * 3_600_000;

/** The newest watched lot that is the same car in the same sale; else the newest that is the same car. */
export function seenOnWatchlist(facts: LotFacts, sameCar: readonly LotState[], now: Instant): SeenAgain | null {
  const newestFirst = [...sameCar].sort((a, b) => b.addedAt - a.addedAt);
  const same = newestFirst.find((lot) => isSameSale(lot.facts, facts, now));
  if (same !== undefined) {
    return { kind: 'watched', lot: same.id, dropped: same.dropped, changes: changesTo(same.facts, facts) };
  }
  const [earlier] = newestFirst;
  return earlier === undefined ? null : { kind: 'another-sale', lot: earlier.id };
}

/**
 * Whether two lots of one car are the same lot. Another venue or sale by name is another lot, and so is a close well
 * after one that has passed: the car was not sold, or its sale was undone, and it is offered again.
 */
export function isSameSale(known: LotFacts, next: LotFacts, now: Instant): boolean {
  const venues = known.venueId !== undefined && next.venueId !== undefined;
  if (venues ? known.venueId !== next.venueId : differs(known.venueName, next.venueName)) return false;
  if (differs(known.sale, next.sale)) return false;
  if (known.close === undefined || next.close === undefined) return true;
  const later = next.close.instant - known.close.instant > HALF_A_DAY;
  return !(later && known.close.instant < now);
}

/** What `next` says otherwise than `known`; what it is silent about stays as it is. */
export function changesTo(known: LotFacts, next: LotFacts): readonly FactChange[] {
  return (Object.keys(next) as LotField[]).flatMap((field): FactChange[] => {
    const [before, after] = [known[field], next[field]];
    if (after === undefined || saysNoMore(field, known, next)) return [];
    return [{ field, before, after, taken: before === undefined || isNewer(field, known, next) }];
  });
}

function saysNoMore(field: LotField, known: LotFacts, next: LotFacts): boolean {
  if (field === 'close') return known.close?.instant === next.close?.instant;
  if (field === 'notes') return known.notes?.includes(next.notes ?? '') ?? false;
  return isSameFact(known[field], next[field]);
}

/** Bids only rise: a lower price comes from an older list, or is a slip. */
function isNewer(field: LotField, known: LotFacts, next: LotFacts): boolean {
  if (field === 'priceNow') return (next.priceNow ?? 0) > (known.priceNow ?? 0);
  return SALE_DECIDES.has(field);
}

const differs = (a: string | undefined, b: string | undefined): boolean =>
  a !== undefined && b !== undefined && plainWords(a) !== plainWords(b);
