import type { LotAct } from '../../acts/act.ts';
import { bidWords } from '../../domain/bid/bid-words.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { EntryId } from '../../journal/ids.ts';
import { bidOffer } from './act-offers.ts';
import { stopOfStanding } from './bids.ts';
import { doLotAct, type LotActStore, previewAct } from './do-lot-act.ts';
import type { Standings } from './standing.ts';

interface Place {
  readonly setup: Setup;
  readonly standings: Standings;
  readonly now: Instant;
}

/** A lot whose bid at max can be noted as it stands, and how much that is. */
export interface AtMax {
  readonly lot: LotState;
  readonly cents: Cents;
}

/** A lot that is left as it is, and why. No full stop. */
export interface LeftOut {
  readonly lot: LotState;
  readonly why: string;
}

const actAt = (cents: Cents): LotAct => ({ do: 'bid', how: 'proxy', cents, offered: true });

/** Of chosen lots, those on which a bid at their max bid can be noted without a question; and the others, with the reason. */
export function planAtMax(
  lots: readonly LotState[],
  place: Place,
): { readonly ready: readonly AtMax[]; readonly left: readonly LeftOut[] } {
  const { standings, now } = place;
  const ready: AtMax[] = [];
  const left: LeftOut[] = [];
  for (const lot of lots) {
    const standing = standings.of(lot);
    const state = standings.bids.at(lot, now);
    const cents = bidOffer(state, stopOfStanding(standing))?.cents;
    if (cents === undefined) left.push({ lot, why: standing.missing[0] ?? bidWords(state) });
    else {
      const decision = previewAct(lot, actAt(cents), place);
      if (decision.as === 'write') ready.push({ lot, cents });
      else left.push({ lot, why: decision.as === 'ask' ? decision.question.words : decision.message });
    }
  }
  return { ready, left };
}

/**
 * Notes those bids, one after the other, each decided on the lot as the store has it by then: what asks something now is left
 * out and named. Undoing the entries takes all of it back.
 */
export async function doAtMax(
  store: LotActStore,
  ready: readonly AtMax[],
  place: Place,
): Promise<{ readonly entries: readonly EntryId[]; readonly left: readonly LeftOut[] }> {
  const entries: EntryId[] = [];
  const left: LeftOut[] = [];
  for (const { lot, cents } of ready) {
    const done = await doLotAct(store, lot, actAt(cents), place);
    if (done.as === 'kept') entries.push(...done.entries);
    else left.push({ lot, why: done.as === 'ask' ? done.question.words : done.message });
  }
  return { entries, left };
}
