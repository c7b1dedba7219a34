import { useMemo } from 'preact/hooks';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { BidAction } from '../../domain/sale/bid-action.ts';
import type { TypedResult } from '../../domain/sale/read-result.ts';
import { resultDoubt } from '../../domain/sale/result-doubt.ts';
import { proxyAction, resultNoteOf } from '../../domain/sale/result-note.ts';
import { sayAction, sayResult } from '../../domain/sale/result-words.ts';
import { instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Standing } from '../../views/lots/standing.ts';
import { useWorkspace } from '../workspace.ts';

/** What a screen does with a lot at its sale. Each verb answers null when it was kept, else why not. */
export interface SaleLog {
  /** `sure` keeps an amount although there is a doubt about it; `bidder` is who bid, where that is said. */
  readonly result: (lot: LotState, typed: TypedResult, sure?: boolean, bidder?: string) => Promise<string | null>;
  readonly proxy: (lot: LotState, amount: Cents | undefined) => Promise<string | null>;
  readonly bid: (lot: LotState, bid: Omit<BidAction, 'at'>) => Promise<string | null>;
}

/** Receipts and results, written down with the max bid of the moment. */
export function useSaleLog(standingOf: (lot: LotState) => Standing): SaleLog {
  const { store, say } = useWorkspace();
  return useMemo<SaleLog>(() => {
    const bid: SaleLog['bid'] = async (lot, action) => {
      const noted = { ...action, at: instant(Date.now()) };
      const written = await store.noteBid(lot.id, noted);
      if (!written.ok) return written.message;
      say(`${sayAction(noted)}: saved for ${lotTitle(lot.facts)}.`, written.value.at(-1)?.id);
      return null;
    };
    // A screen may be a moment behind what was said last; whether a proxy was placed or raised is what the journal says.
    const asKept = async (lot: LotState) => (await store.lot(lot.id)) ?? lot;
    return {
      bid,
      async result(lot, typed, sure = false, bidder) {
        const { facts, sale } = await asKept(lot);
        const { maxBid, missing } = standingOf(lot);
        const doubt = sure ? null : resultDoubt(typed.result, lot.facts, maxBid);
        if (doubt !== null) return `${doubt} Send it again to save it as it is.`;
        const note = resultNoteOf({
          typed,
          facts,
          sale,
          maxBid: missing.length > 0 ? undefined : maxBid,
          now: instant(Date.now()),
          bidder,
        });
        const written = await store.noteResult(lot.id, note);
        if (!written.ok) return written.message;
        say(`${lotTitle(lot.facts)}: ${sayResult(typed.result)}.`, written.value.at(-1)?.id);
        return null;
      },
      async proxy(lot, amount) {
        const action = proxyAction((await asKept(lot)).facts.proxy, amount);
        return action === null ? null : bid(lot, { action, ...(amount !== undefined && { cents: amount }) });
      },
    };
  }, [store, say, standingOf]);
}
