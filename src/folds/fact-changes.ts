import type { LotFacts, LotField } from '../domain/lot/lot.ts';
import { stillUnread } from '../domain/lot/unread-cell.ts';
import type { CloseTime } from '../domain/time/close-time.ts';
import { isSameFact } from './same-fact.ts';

/** What a file or a page says otherwise than is known already. */
export interface FactChange {
  readonly field: LotField;
  readonly before: LotFacts[LotField] | undefined;
  readonly after: LotFacts[LotField];
  /** Whether an update takes it unless the buyer says otherwise. What he has put in himself is not replaced by a file. */
  readonly taken: boolean;
}

/** Facts that the sale decides, and that a newer telling therefore knows better. */
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

/** A countdown is read to the second it was looked at; told again it lands a little beside. */
const COUNTDOWN_SLACK_MS = 90_000;

/** What `next` says otherwise than `known`; what it is silent about stays as it is. */
export function changesTo(known: LotFacts, next: LotFacts): readonly FactChange[] {
  return (Object.keys(next) as LotField[]).flatMap((field): FactChange[] => {
    const [before, after] = [known[field], next[field]];
    if (after === undefined || saysNoMore(field, known, next)) return [];
    return [{ field, before, after, taken: before === undefined || isNewer(field, known, next) }];
  });
}

function saysNoMore(field: LotField, known: LotFacts, next: LotFacts): boolean {
  if (field === 'close') return isSameClose(known.close, next.close);
  // What is known already is not doubted because a later table could not be read.
  if (field === 'unread')
    return (
      stillUnread(next.unread, new Set([...Object.keys(known)])) === undefined || isSameFact(known.unread, next.unread)
    );
  if (field === 'notes') return known.notes?.includes(next.notes ?? '') ?? false;
  return isSameFact(known[field], next[field]);
}

function isSameClose(a: CloseTime | undefined, b: CloseTime | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  const slack = a.how === 'countdown' || b.how === 'countdown' ? COUNTDOWN_SLACK_MS : 0;
  return Math.abs(a.instant - b.instant) <= slack;
}

/** Bids only rise: a lower price comes from an older list, or is a slip. */
function isNewer(field: LotField, known: LotFacts, next: LotFacts): boolean {
  if (field === 'priceNow') return (next.priceNow ?? 0) > (known.priceNow ?? 0);
  return SALE_DECIDES.has(field);
}
