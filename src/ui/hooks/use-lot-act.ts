import { useCallback } from 'preact/hooks';
import { changeForAct, type LotAct } from '../../acts/lot-acts.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { Cents } from '../../domain/money/cents.ts';
import { instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { standingsUnder } from '../../views/lots/standing.ts';
import { actWords } from '../../views/words/act-words.ts';
import { useWorkspace } from '../workspace.ts';

/**
 * Does something about a lot: keeps it as one entry, and says so with its undo. Resolves to null when it was kept, else to
 * the reason why not, which has been said as well.
 */
export function useLotAct(): (lot: LotState, act: LotAct, maxBid: Cents | null) => Promise<string | null> {
  const { store, setup, say } = useWorkspace();
  return useCallback(
    async (lot, act, maxBid) => {
      const { loud } = standingsUnder(setup).bids.open(lot);
      const change = changeForAct(lot, act, { now: instant(Date.now()), rules: setup.alerts, maxBid, loud });
      const written = change.ok ? await store.append([change.value]) : change;
      if (!written.ok) say(written.message);
      else say(`${lotTitle(lot.facts)}: ${actWords(act)}`, written.value[0]?.id);
      return written.ok ? null : written.message;
    },
    [store, setup, say],
  );
}
