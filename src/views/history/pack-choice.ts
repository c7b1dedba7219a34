import type { Envelope } from '../../journal/read-entry.ts';

/** How much of a lot's own entries a pack shows whole. */
export type PackShows = 'sale' | 'dispute' | 'everything';

/**
 * The kinds that a pack of the sale may show. A list of what goes out, not of what stays: a kind that is added later, such
 * as one of the books, is held back until someone decides otherwise.
 */
const SALE: ReadonlySet<string> = new Set([
  'lots-added',
  'lot-changed',
  'lot-dropped',
  'bid-noted',
  'result-noted',
  'attachment-kept',
  'undone',
]);
const DISPUTE: ReadonlySet<string> = new Set([
  'dispute-opened',
  'dispute-changed',
  'dispute-stepped',
  'dispute-closed',
  'step-noted',
]);

/** The facts of a lot that a sale states or sees; what we think, what it would cost us and how we pay is not among them. */
const STATED: ReadonlySet<string> = new Set([
  'vin',
  'year',
  'make',
  'model',
  'trim',
  'miles',
  'lotNumber',
  'venueId',
  'venueName',
  'sale',
  'seller',
  'location',
  'close',
  'priceNow',
  'increment',
  'titleId',
  'proxy',
  'pageUrl',
]);

/** Whether an entry about the lot is shown whole. */
export function showsUnder(shows: PackShows): (entry: Envelope) => boolean {
  if (shows === 'everything') return () => true;
  return ({ happening }) =>
    (SALE.has(happening.kind) && onlyStated(happening)) || (shows === 'dispute' && DISPUTE.has(happening.kind));
}

function onlyStated(happening: Envelope['happening']): boolean {
  const clear = Array.isArray(happening.clear) ? happening.clear.map(String) : [];
  const lots = Array.isArray(happening.lots) ? happening.lots : [];
  const sets: unknown[] = [happening.set, ...lots.map((lot: { readonly facts?: unknown }) => lot.facts)];
  const fields = sets.flatMap((set) => (typeof set === 'object' && set !== null ? Object.keys(set) : []));
  return [...clear, ...fields].every((field) => STATED.has(field));
}
