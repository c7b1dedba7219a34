import { useCallback } from 'preact/hooks';
import type { LotAct } from '../../acts/act.ts';
import type { Done } from '../../acts/do-act.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import { instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { doLotAct } from '../../views/lots/do-lot-act.ts';
import { useWorkspace } from '../workspace.ts';
import { useStandingsNow } from './use-standings.ts';

/** What came of an act on a screen: null when it was kept or known, else the question or the reason why it was not. */
export type Unkept = Extract<Done, { as: 'ask' | 'refuse' }>;

/**
 * Does something about a lot, and says so with its undo. What is asked or refused comes back to the screen, which still
 * has what was typed.
 */
export function useLotAct(): (lot: LotState, act: LotAct) => Promise<Unkept | null> {
  const { store, setup, say } = useWorkspace();
  const standings = useStandingsNow();
  return useCallback(
    async (lot, act) => {
      const done = await doLotAct(store, lot, act, { setup, standings, now: instant(Date.now()) });
      if (done.as === 'kept') say(`${lotTitle(lot.facts)}: ${done.words}.`, ...done.entries);
      else if (done.as === 'nothing') say(`${lotTitle(lot.facts)}: ${done.message}`);
      else return done;
      return null;
    },
    [store, setup, standings, say],
  );
}
