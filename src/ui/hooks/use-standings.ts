import { useEffect, useMemo, useState } from 'preact/hooks';
import type { LotState } from '../../folds/lot-state.ts';
import { type Standings, standingsUnder } from '../../views/lots/standing.ts';
import { useWorkspace } from '../workspace.ts';

/** A slice of work short enough that the page never feels it. */
const SLICE_MS = 8;
/** After so much work, what is known by then is worth looking at. */
const LOOK_AGAIN_MS = 500;

/**
 * Standings under the present setup and plan. While `ahead` holds, those of all `lots` are worked out in the page's idle moments;
 * `settled` changes when they all are, so that a list sorted by them can be put in its final order; `worked` changes from
 * time to time before that.
 */
export function useStandings(
  lots: readonly LotState[],
  ahead: boolean,
): { standings: Standings; settled: boolean; worked: number } {
  const standings = useStandingsNow();
  const [worked, setWorked] = useState(0);
  const [settledFor, setSettledFor] = useState<readonly LotState[] | null>(null);
  useEffect(() => {
    if (!ahead) return;
    let timer: ReturnType<typeof setTimeout>;
    let looked = performance.now();
    const slice = () => {
      const until = performance.now() + SLICE_MS;
      const done = standings.workAhead(lots, () => performance.now() > until);
      if (done) return setSettledFor(lots);
      if (performance.now() - looked > LOOK_AGAIN_MS) {
        looked = performance.now();
        setWorked((times) => times + 1);
      }
      timer = setTimeout(slice, SLICE_MS);
    };
    timer = setTimeout(slice, SLICE_MS);
    return () => clearTimeout(timer);
  }, [standings, lots, ahead]);
  return { standings, settled: settledFor === lots, worked };
}

/** Standings under the present setup and plan; what was worked out under the setup before is not worked out again. */
export function useStandingsNow(): Standings {
  const { setup, planned } = useWorkspace();
  return useMemo(() => standingsUnder(setup, planned), [setup, planned]);
}
