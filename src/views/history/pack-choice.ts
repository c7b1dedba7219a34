import { rowOfKind } from '../../journal/happening.ts';
import type { PackShows } from '../../journal/happenings/row.ts';
import type { Envelope } from '../../journal/read-entry.ts';

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

/** Whether an entry about the lot is shown whole. What this version does not know is held back. */
export function showsUnder(shows: PackShows): (entry: Envelope) => boolean {
  if (shows === 'everything') return () => true;
  return ({ happening }) => {
    const pack = rowOfKind(happening.kind)?.pack;
    return (pack === 'sale' && onlyStated(happening)) || (pack === 'dispute' && shows === 'dispute');
  };
}

function onlyStated(happening: Envelope['happening']): boolean {
  const clear = Array.isArray(happening.clear) ? happening.clear.map(String) : [];
  const lots = Array.isArray(happening.lots) ? happening.lots : [];
  const sets: unknown[] = [happening.set, ...lots.map((lot: { readonly facts?: unknown }) => lot.facts)];
  const fields = sets.flatMap((set) => (typeof set === 'object' && set !== null ? Object.keys(set) : []));
  return [...clear, ...fields].every((field) => STATED.has(field));
}
