import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import type { ReviewLot } from '../../domain/books/review/review-groups.ts';
import { type Cents, cents, ZERO } from '../../domain/money/cents.ts';
import type { Result } from '../../domain/sale/result.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { isCanceled } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { NotedResult } from '../../journal/states/sale-state.ts';
import { openDisputesOf } from './after-sale-of.ts';

/** Every lot whose sale is over, as the review counts it. */
export function reviewLots(lots: readonly LotState[], folders: readonly PurchaseFolder[], zone: Zone): ReviewLot[] {
  const byLot = new Map(folders.map((folder) => [folder.lot, folder]));
  return lots.flatMap((lot): ReviewLot[] => {
    const noted = lot.sale?.result;
    return noted === undefined ? [] : [reviewLot(lot, noted, byLot.get(lot.id), zone)];
  });
}

/** One of them. */
export function reviewLot(
  lot: LotState,
  noted: NotedResult,
  folder: PurchaseFolder | undefined,
  zone: Zone,
): ReviewLot {
  const inStock = folder?.stage === 'in-stock';
  const canceled = isCanceled(lot);
  const allIn = canceled ? null : allInOf(folder);
  return {
    day: dateIn(zone, noted.at),
    venue: lot.facts.venueName ?? 'No venue named',
    buyer: noted.bidder ?? noted.author,
    ended: noted.result.ended,
    canceled,
    bids: (lot.sale?.bids ?? []).filter(({ action }) => BIDS.has(action)).length,
    hammer: hammerOf(noted.result),
    maxBid: noted.maxBidCents === undefined || noted.maxBidCents === null ? null : cents(noted.maxBidCents),
    allIn,
    tiedUp: inStock ? (allIn ?? folder.expectedCents) : ZERO,
    ...openDisputesOf(lot),
    expectedGross: folder?.stage === 'sold' ? (folder.expected?.gross ?? null) : null,
    actualGross: folder?.stage === 'sold' ? folder.gross : null,
  };
}

const BIDS: ReadonlySet<string> = new Set(['proxy-placed', 'proxy-raised', 'live-bid']);

function hammerOf(result: Result): Cents | null {
  return result.ended === 'won' || result.ended === 'lost' ? (result.hammerCents ?? null) : null;
}

/** Until its price is billed, what is recorded for a car is not all of it. */
function allInOf(folder: PurchaseFolder | undefined): Cents | null {
  return folder?.costs.some(({ cost }) => cost === 'hammer') ? folder.actualCents : null;
}
