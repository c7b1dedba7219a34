import type { BookedDocument } from '../../domain/books/booking.ts';
import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import type { LotFacts } from '../../domain/lot/lot.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { isCanceled } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { ENDING_WORDS } from '../week/closing-words.ts';
import { reviewLot } from './review-lots.ts';

interface Numbered {
  readonly document?: BookedDocument | undefined;
}

/** One lot with its result. */
export interface ResultOut {
  readonly facts: LotFacts;
  readonly ended: string;
  readonly day: LocalDate;
  readonly buyer: string;
  /** At which it sold, whoever bought it. */
  readonly finalPrice: Cents | null;
  /** The highest bid of a lot that did not sell. */
  readonly highBid: Cents | null;
  /** Ours of that moment; null where no price worked, or none was known. */
  readonly maxBid: Cents | null;
  readonly plannedBid: Cents | null;
  /** The last that was placed. */
  readonly ourBid: Cents | null;
  /** What we bought it for, also where the sale was canceled since. */
  readonly hammer: Cents | null;
  readonly allIn: Cents | null;
  readonly canceledOn: LocalDate | undefined;
  readonly soldOn: LocalDate | undefined;
  /** What carries the numbers of bills, and those of checks and transfers. */
  readonly bills: readonly Numbered[];
  readonly checks: readonly Numbered[];
}

const BIDS: ReadonlySet<string> = new Set(['proxy-placed', 'proxy-raised', 'proxy-cut', 'live-bid']);

/** A lot with a result as a row of the file; null while it has none. */
export function resultOut(lot: LotState, folder: PurchaseFolder | undefined, zone: Zone): ResultOut | null {
  const noted = lot.sale?.result;
  if (noted === undefined) return null;
  const { result } = noted;
  const seen = reviewLot(lot, noted, folder, zone);
  const last = (lot.sale?.bids ?? []).findLast((bid) => bid.cents !== undefined && BIDS.has(bid.action));
  const planned = noted.plannedCents ?? last?.plannedCents;
  return {
    facts: lot.facts,
    ended: isCanceled(lot) ? 'sale canceled' : ENDING_WORDS[result.ended],
    day: seen.day,
    buyer: seen.buyer,
    finalPrice: seen.hammer,
    highBid: result.ended === 'not-sold' ? (result.highCents ?? null) : null,
    maxBid: seen.maxBid,
    plannedBid: planned === undefined || planned === null ? null : cents(planned),
    ourBid: last?.cents === undefined ? null : cents(last.cents),
    hammer: result.ended === 'won' ? seen.hammer : null,
    allIn: seen.allIn,
    canceledOn: folder?.undoneOn,
    soldOn: folder?.stage === 'sold' ? folder.outcome?.date : undefined,
    bills: folder?.costs ?? [],
    checks: [...(folder?.payments ?? []), ...(folder?.floor ?? [])],
  };
}
