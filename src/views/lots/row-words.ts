import { offerWords } from '../../domain/alerts/offer.ts';
import type { OpenBid } from '../../domain/bid/bid-state.ts';
import { bidWords } from '../../domain/bid/bid-words.ts';
import type { Contradiction } from '../../domain/claims/contradictions.ts';
import { lotName, lotTitle } from '../../domain/lot/car-name.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { cents, ZERO } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { lastReading } from '../../domain/time/close-time.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { bidOffer } from './act-offers.ts';
import { type Bids, stopOfStanding } from './bids.ts';
import type { CloseLook } from './close-look.ts';
import { closeLook } from './close-look.ts';
import { type RowAct, rowActFor } from './row-act.ts';
import type { Standing } from './standing.ts';
import { noStopWords, plannedWords } from './stop-words.ts';

/** Everything on a lot's row except the countdown, so that it can be cached. */
export interface RowWords {
  readonly id: LotId;
  readonly title: string;
  /** What it is called where its row is not in sight: with its number. */
  readonly name: string;
  /** What else tells it from others: miles, venue, lot number, the end of its VIN. */
  readonly sub: string;
  readonly close?: CloseLook | undefined;
  readonly price?: string | undefined;
  readonly maxBid: { readonly words: string; readonly as: 'figure' | 'strong' | 'missing' };
  /** What the plan bids; undefined where there is no plan for the lot. */
  readonly planned?: string | undefined;
  readonly headroom?: { readonly words: string; readonly past: boolean } | undefined;
  /** The one thing to do next, or what is done; of a lot that has not closed. */
  readonly todo: {
    readonly words: string;
    readonly as: 'act' | 'doubt' | 'done' | 'quiet';
    /** What can be done there when it is pressed. */
    readonly act: RowAct;
    /** What can be noted with one more press; see `bidOffer`. */
    readonly offer?: string;
  };
  /** What our bid is, whatever there is to do first; of a lot that has not closed. */
  readonly bid: string;
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
    name: lotName(facts),
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
    planned: plannedWords(standing),
    headroom: headroomWords(standing),
    todo: todoWords(lot, { standing, state: bids.open(lot), doubts }),
    bid: bidWords(bids.open(lot)),
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
  readonly standing: Standing;
  readonly state: OpenBid;
  readonly doubts: readonly Contradiction[];
}

/** A placed bid that needs checking comes before everything that is only unfinished. */
function todoWords(lot: LotState, from: TodoFrom): RowWords['todo'] {
  const todo = firstTodo(lot, from);
  const offer = todo.act === 'bid' ? bidOffer(from.state, stopOfStanding(from.standing)) : null;
  return offer === null ? todo : { ...todo, offer: offerWords(offer) };
}

function firstTodo({ facts, clock }: LotState, { standing, state, doubts }: TodoFrom): RowWords['todo'] {
  const handedTo = clock?.handedTo?.to;
  const words = bidWords(state);
  if (state.is !== 'none' && state.loud && handedTo === undefined) return { words, as: 'act', act: 'bid' };
  const [first] = standing.missing;
  if (first !== undefined) return { words: first, as: 'act', act: rowActFor(standing.needs?.[0]) };
  if (facts.close === undefined) return { words: 'Enter closing time', as: 'act', act: 'close' };
  if (facts.close.doubts.length > 0) return { words: 'check the close', as: 'doubt', act: 'close' };
  if (doubts.length > 0) return { words: 'check the listing', as: 'doubt', act: 'sheet' };
  if (handedTo !== undefined)
    return { words: `${handedTo} has it; ${words.charAt(0).toLowerCase()}${words.slice(1)}`, as: 'done', act: 'bid' };
  if (state.is === 'none') return { words, as: state.loud ? 'act' : 'quiet', act: 'bid' };
  return { words, as: state.is === 'outbid' ? 'quiet' : 'done', act: 'bid' };
}

function endedWords(lot: LotState, bids: Bids): RowWords['ended'] {
  const { facts, sale } = lot;
  const words = bidWords(bids.at(lot, Number.POSITIVE_INFINITY));
  if (sale?.result !== undefined) return { words, at: 0 };
  return { words, ...(facts.close !== undefined && { at: lastReading(facts.close) }) };
}
