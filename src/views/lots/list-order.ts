import type { BidState } from '../../domain/bid/bid-state.ts';
import { carName } from '../../domain/lot/car-name.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { DAY } from '../../domain/time/units.ts';
import { hasBid, isOver } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { LotWorks } from './standing.ts';

export const SORT_KEYS = ['close', 'todo', 'headroom', 'max-bid', 'price', 'car'] as const;
export type SortKey = (typeof SORT_KEYS)[number];

export const SHOW_KEYS = ['open', 'day', 'unplaced', 'outbid', 'over-max', 'unfinished', 'closed', 'all'] as const;
export type ShowKey = (typeof SHOW_KEYS)[number];

export interface ListView {
  readonly show: ShowKey;
  readonly sort: SortKey;
  readonly descending: boolean;
  readonly search: string;
}

/**
 * The lots a view shows, in its order. Lots with nothing to sort by come last in either direction; ties fall back to
 * the close, then to the id, so that the order never flickers.
 */
export function orderLots(lots: readonly LotState[], view: ListView, works: LotWorks, now: Instant): LotState[] {
  const words = view.search.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = lots.filter((lot) => shows(lot, view.show, works, now) && matches(lot, words));
  const direction = view.descending ? -1 : 1;
  const key = sortKeyOf(view.sort, works, now);
  const keyed = shown.map((lot) => ({ lot, key: key(lot) }));
  keyed.sort(
    (a, b) => compareKeys(a.key, b.key, direction) || compareCloses(a.lot, b.lot) || (a.lot.id < b.lot.id ? -1 : 1),
  );
  return keyed.map(({ lot }) => lot);
}

function shows(lot: LotState, show: ShowKey, { of, bids }: LotWorks, now: Instant): boolean {
  const close = lot.facts.close?.instant;
  const open = !isOver(lot, now);
  switch (show) {
    case 'all':
      return true;
    case 'open':
      return open;
    case 'closed':
      return !open;
    case 'day':
      return open && close !== undefined && close <= now + DAY;
    case 'unplaced':
      return open && !hasBid(lot);
    case 'outbid':
    case 'over-max':
      return open && hasBid(lot) && bids.at(lot, now).is === show;
    case 'unfinished':
      return open && (close === undefined || of(lot).missing.length > 0);
  }
}

const haystacks = new WeakMap<LotState, string>();

function matches(lot: LotState, words: readonly string[]): boolean {
  if (words.length === 0) return true;
  let haystack = haystacks.get(lot);
  if (haystack === undefined) {
    const f = lot.facts;
    haystack = [f.year, f.make, f.model, f.trim, f.vin, f.lotNumber, f.venueName, f.sale, f.seller, f.location, f.notes]
      .filter((part) => part !== undefined)
      .join(' ')
      .toLowerCase();
    haystacks.set(lot, haystack);
  }
  const text = haystack;
  return words.every((word) => text.includes(word));
}

type Key = number | string | null;

function sortKeyOf(sort: SortKey, { of, bids }: LotWorks, now: Instant): (lot: LotState) => Key {
  switch (sort) {
    case 'close':
      return (lot) => lot.facts.close?.instant ?? null;
    case 'todo':
      return (lot) => urgencyOf(bids.at(lot, now));
    case 'headroom':
      return (lot) => of(lot).headroom;
    case 'max-bid':
      return (lot) => of(lot).maxBid;
    case 'price':
      return (lot) => lot.facts.priceNow ?? null;
    case 'car':
      return (lot) => carName(lot.facts).toLowerCase() || null;
  }
}

/** What wants a hand before what is settled, and that before what is over: 0 first. */
function urgencyOf(bid: BidState): number {
  if (bid.is === 'ended') return bid.result === undefined ? 4 : 9;
  if (!bid.loud) return bid.is === 'none' ? 6 : 5;
  return { outbid: 0, 'over-max': 1, none: 2, standing: 3, pending: 3 }[bid.is];
}

function compareKeys(a: Key, b: Key, direction: number): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  if (a === b) return 0;
  return a < b ? -direction : direction;
}

function compareCloses(a: LotState, b: LotState): number {
  return (a.facts.close?.instant ?? Number.MAX_SAFE_INTEGER) - (b.facts.close?.instant ?? Number.MAX_SAFE_INTEGER);
}
