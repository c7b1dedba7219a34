import type { OpenBid } from '../../domain/bid/bid-state.ts';
import { bidWords } from '../../domain/bid/bid-words.ts';
import type { Contradiction } from '../../domain/claims/contradictions.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { cents, ZERO } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { lastReading } from '../../domain/time/close-time.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Bids } from './bids.ts';
import type { CloseLook } from './close-look.ts';
import { closeLook } from './close-look.ts';
import type { Standing } from './standing.ts';
import { noStopWords } from './stop-words.ts';

/** Everything on a lot's row except the countdown, so that it can be cached. */
export interface RowWords {
  readonly id: LotId;
  readonly title: string;
  /** What else tells it from others: miles, venue, lot number, the end of its VIN. */
  readonly sub: string;
  readonly close?: CloseLook | undefined;
  readonly price?: string | undefined;
  readonly maxBid: { readonly words: string; readonly as: 'figure' | 'strong' | 'missing' };
  readonly headroom?: { readonly words: string; readonly past: boolean } | undefined;
  /** The one thing to do next, or what is done; of a lot that has not closed. */
  readonly todo: { readonly words: string; readonly as: 'act' | 'doubt' | 'done' | 'quiet' };
  /** What stands there from `at` on: how it ended, or that nobody has said. Without `at` it never does. */
  readonly ended: { readonly words: string; readonly at?: number | undefined };
}

interface RowFrom {
  readonly standing: Standing;
  readonly bids: Bids;
  readonly doubts: readonly Contradiction[];
  readonly setup: Setup;
}

export function rowWords(lot: LotState, { standing, bids, doubts, setup }: RowFrom): RowWords {
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
    close: facts.close && closeLook(facts.close, setup, lot.addedAt),
    price: facts.priceNow === undefined ? undefined : formatMoney(facts.priceNow),
    maxBid: maxBidWords(standing),
    headroom: headroomWords(standing),
    todo: todoWords(lot, { missing: standing.missing, state: bids.open(lot), doubts }),
    ended: endedWords(lot, bids),
  };
}

function maxBidWords(standing: Standing): RowWords['maxBid'] {
  const none = noStopWords(standing);
  if (none !== undefined) return { words: none, as: standing.missing.length > 0 ? 'missing' : 'strong' };
  return { words: formatMoney(standing.maxBid ?? ZERO), as: 'figure' };
}

function headroomWords({ headroom }: Standing): RowWords['headroom'] {
  if (headroom === null) return undefined;
  return { words: formatMoney(cents(Math.abs(headroom))), past: headroom < 0 };
}

interface TodoFrom {
  readonly missing: readonly string[];
  readonly state: OpenBid;
  readonly doubts: readonly Contradiction[];
}

/** A placed bid that needs checking comes before everything that is only unfinished. */
function todoWords({ facts, clock }: LotState, { missing, state, doubts }: TodoFrom): RowWords['todo'] {
  const handedTo = clock?.handedTo?.to;
  const words = bidWords(state);
  if (state.is !== 'none' && state.loud && handedTo === undefined) return { words, as: 'act' };
  const [first] = missing;
  if (first !== undefined) return { words: first, as: 'act' };
  if (facts.close === undefined) return { words: 'Enter closing time', as: 'act' };
  if (facts.close.doubts.length > 0) return { words: 'check the close', as: 'doubt' };
  if (doubts.length > 0) return { words: 'check the listing', as: 'doubt' };
  if (handedTo !== undefined)
    return { words: `${handedTo} has it; ${words.charAt(0).toLowerCase()}${words.slice(1)}`, as: 'done' };
  if (state.is === 'none') return { words, as: state.loud ? 'act' : 'quiet' };
  return { words, as: state.is === 'outbid' ? 'quiet' : 'done' };
}

function endedWords(lot: LotState, bids: Bids): RowWords['ended'] {
  const { facts, sale } = lot;
  const words = bidWords(bids.at(lot, Number.POSITIVE_INFINITY));
  if (sale?.result !== undefined) return { words, at: 0 };
  return { words, ...(facts.close !== undefined && { at: lastReading(facts.close) }) };
}
