import type { Cents } from '../domain/money/cents.ts';
import type { BidAction } from '../domain/sale/bid-action.ts';
import type { Result } from '../domain/sale/result.ts';
import type { Instant } from '../domain/time/instant.ts';
import { HOUR } from '../domain/time/units.ts';
import type { Entry } from '../journal/entry.ts';
import type { Happening } from '../journal/happening.ts';
import type { DeviceId, EntryId } from '../journal/ids.ts';
import { isSameFact } from './same-fact.ts';

/** A bid action and the entry that holds it. */
export interface NotedBid extends BidAction {
  readonly entry: EntryId;
}

/** How the lot ended, by the last word on it. */
export interface NotedResult {
  readonly entry: EntryId;
  readonly result: Result;
  readonly at: Instant;
  readonly notedAt: Instant;
  readonly author: string;
  readonly bidder?: string | undefined;
  readonly by?: 'proxy' | 'live' | undefined;
  readonly maxBidCents?: Cents | null | undefined;
  readonly early?: boolean | undefined;
  readonly bidWasIn?: boolean | undefined;
  readonly corrects?: EntryId | undefined;
  /** The browser that wrote it, where the journal can tell whether that one knew of the result before. */
  readonly device?: DeviceId | undefined;
}

/** What happened at the sale of one lot. A lot of which nothing is known yet has none of it. */
export interface SaleState {
  /** In the order in which they were written down. */
  readonly bids: readonly NotedBid[];
  readonly result?: NotedResult;
  /** What another browser noted otherwise, without either knowing of the other. */
  readonly otherResult?: NotedResult;
}

const NOTHING: SaleState = { bids: [] };

/** The sale after an entry about the lot that counts; the same object when the entry says nothing of it. */
export function saleAfter(sale: SaleState | undefined, entry: Entry): SaleState | undefined {
  const { happening } = entry;
  const before = sale ?? NOTHING;
  switch (happening.kind) {
    case 'bid-noted':
      return { ...before, bids: [...before.bids, { ...happening.bid, entry: entry.id }] };
    case 'result-noted': {
      const { otherResult: _, ...left } = before;
      const result = notedResult(entry, happening);
      const other = contradicted(before, result);
      return { ...left, result, ...(other && { otherResult: other }) };
    }
    default:
      return sale;
  }
}

/** From this version on, a result names the one that it corrects. */
const NAMES_WHAT_IT_CORRECTS = 3;

function notedResult(
  { id, at, author, device, version }: Entry,
  { kind: _, ...noted }: Extract<Happening, { kind: 'result-noted' }>,
): NotedResult {
  return {
    ...noted,
    entry: id,
    notedAt: at,
    author,
    ...(version >= NAMES_WHAT_IT_CORRECTS && { device }),
  };
}

/** The result before, where another browser noted it, the new one names none that it corrects, and the two differ. */
function contradicted({ result: before }: SaleState, next: NotedResult): NotedResult | undefined {
  if (before?.device === undefined || next.device === undefined || next.corrects !== undefined) return undefined;
  return before.device === next.device || isSameFact(before.result, next.result) ? undefined : before;
}

/** A close that moves by more than this is another sale of the car, not more time. */
const MORE_TIME = 12 * HOUR;

/**
 * The sale once its close has moved: where the sale added time after somebody noted how it ended, it goes on, and what was
 * noted was too early. A win and a lot that was withdrawn are left alone, as is one that ended early.
 */
export function saleAfterMove(
  sale: SaleState | undefined,
  { from, to }: { readonly from: Instant | undefined; readonly to: Instant | undefined },
  now: Instant,
): SaleState | undefined {
  const noted = sale?.result;
  if (noted === undefined || from === undefined || to === undefined) return sale;
  const { ended } = noted.result;
  const goesOn = to > now && to > from && to - from < MORE_TIME;
  if (!goesOn || noted.early === true || ended === 'won' || ended === 'withdrawn') return sale;
  const { result: _, otherResult: __, ...left } = sale ?? NOTHING;
  return left;
}
