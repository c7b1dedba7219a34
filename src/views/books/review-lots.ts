import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import type { ReviewLot } from '../../domain/books/review/review-groups.ts';
import { type Cents, cents, ZERO } from '../../domain/money/cents.ts';
import type { Result } from '../../domain/sale/result.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { openDisputesOf } from './after-sale-of.ts';

/** Every lot whose sale is over, as the review counts it. */
export function reviewLots(lots: readonly LotState[], folders: readonly PurchaseFolder[], zone: Zone): ReviewLot[] {
  const byLot = new Map(folders.map((folder) => [folder.lot, folder]));
  return lots.flatMap((lot): ReviewLot[] => {
    const noted = lot.sale?.result;
    if (noted === undefined) return [];
    const folder = byLot.get(lot.id);
    const inStock = folder?.stage === 'in-stock';
    const hammer = hammerOf(noted.result);
    const spent = spentOn(noted.result, folder);
    return [
      {
        day: dateIn(zone, noted.at),
        venue: lot.facts.venueName ?? 'No venue named',
        buyer: noted.bidder ?? noted.author,
        ended: noted.result.ended,
        bids: (lot.sale?.bids ?? []).filter(({ action }) => BIDS.has(action)).length,
        hammer,
        maxBid: noted.maxBidCents === undefined || noted.maxBidCents === null ? null : cents(noted.maxBidCents),
        spent,
        tiedUp: inStock ? spent : ZERO,
        ...openDisputesOf(lot),
        expectedGross: folder?.stage === 'sold' ? (folder.expected?.gross ?? null) : null,
        actualGross: folder?.stage === 'sold' ? folder.gross : null,
      },
    ];
  });
}

const BIDS: ReadonlySet<string> = new Set(['proxy-placed', 'proxy-raised', 'live-bid']);

function hammerOf(result: Result): Cents | null {
  return result.ended === 'won' || result.ended === 'lost' ? (result.hammerCents ?? null) : null;
}

/** An undone purchase has cost what nobody gave back, which the books know; it is not counted as spent on a car. */
function spentOn(result: Result, folder: PurchaseFolder | undefined): Cents {
  if (result.ended !== 'won' || folder?.stage === 'undone') return ZERO;
  return folder?.costs.some(({ cost }) => cost === 'hammer') ? folder.actualCents : result.hammerCents;
}
