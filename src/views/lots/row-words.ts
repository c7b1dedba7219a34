import type { Contradiction } from '../../domain/claims/contradictions.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { CloseLook } from './close-look.ts';
import { closeLook } from './close-look.ts';
import type { Standing } from './standing.ts';

/** One lot as its row says it: all but what changes with the clock, and so as true tomorrow as what it was made from. */
export interface RowWords {
  readonly id: LotId;
  readonly title: string;
  /** What else tells it from others: miles, venue, lot number, the end of its VIN. */
  readonly sub: string;
  readonly close?: CloseLook | undefined;
  readonly price?: string | undefined;
  readonly maxBid: { readonly words: string; readonly as: 'figure' | 'strong' | 'missing' };
  readonly headroom?: { readonly words: string; readonly past: boolean } | undefined;
  /** The one thing to do next, or that it is done; of a lot that has not closed. */
  readonly todo: { readonly words: string; readonly as: 'act' | 'doubt' | 'done' | 'quiet' };
}

export function rowWords(
  lot: LotState,
  { standing, doubts, setup }: { standing: Standing; doubts: readonly Contradiction[]; setup: Setup },
): RowWords {
  const { facts } = lot;
  return {
    id: lot.id,
    title: lotTitle(facts),
    sub: [
      facts.miles === undefined ? undefined : `${facts.miles.toLocaleString('en-US')} mi`,
      facts.venueName ?? facts.venueId,
      facts.lotNumber && `lot ${facts.lotNumber}`,
      facts.vin && `…${facts.vin.slice(-6)}`,
    ]
      .filter(Boolean)
      .join(' · '),
    close: facts.close && closeLook(facts.close, setup),
    price: facts.priceNow === undefined ? undefined : formatMoney(facts.priceNow),
    maxBid: maxBidWords(standing),
    headroom: headroomWords(standing),
    todo: todoWords(lot, standing, doubts),
  };
}

function maxBidWords({ missing, maxBid }: Standing): RowWords['maxBid'] {
  if (missing.length > 0) return { words: 'not yet', as: 'missing' };
  return maxBid === null ? { words: 'no price pays', as: 'strong' } : { words: formatMoney(maxBid), as: 'figure' };
}

function headroomWords({ headroom }: Standing): RowWords['headroom'] {
  if (headroom === null) return undefined;
  return { words: formatMoney(cents(Math.abs(headroom))), past: headroom < 0 };
}

function todoWords(lot: LotState, standing: Standing, doubts: readonly Contradiction[]): RowWords['todo'] {
  const { facts } = lot;
  const missing = standing.missing[0];
  if (missing !== undefined) return { words: missing, as: 'act' };
  if (facts.close === undefined) return { words: 'Say when it closes', as: 'act' };
  if (facts.close.doubts.length > 0) return { words: 'check the close', as: 'doubt' };
  if (doubts.length > 0) return { words: 'check the listing', as: 'doubt' };
  const handedTo = lot.clock?.handedTo?.to;
  const done = [
    handedTo !== undefined && `${handedTo} has it`,
    facts.proxy !== undefined && `${handedTo === undefined ? 'Placed' : 'placed'} ${formatMoney(facts.proxy)}`,
  ].filter(Boolean);
  if (done.length > 0) return { words: done.join('; '), as: 'done' };
  const over = standing.maxBid === null || (standing.headroom !== null && standing.headroom < 0);
  return over ? { words: 'Let it go', as: 'quiet' } : { words: 'Place a proxy', as: 'act' };
}
