import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Setup } from '../../domain/setup/setup.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { type Standings, standingsUnder } from '../../views/lots/standing.ts';

/** A slice of work short enough that the page never feels it. */
const SLICE_MS = 8;

/**
 * Standings under the present setup. While `ahead` holds, those of all `lots` are worked out in the page's idle moments;
 * `settled` changes when they all are, so that a list sorted by them can be put in its final order.
 */
export function useStandings(
  setup: Setup,
  lots: readonly LotState[],
  ahead: boolean,
): { standings: Standings; settled: boolean } {
  const standings = useMemo(() => standingsUnder(setup), [setup]);
  const [settledFor, setSettledFor] = useState<readonly LotState[] | null>(null);
  useEffect(() => {
    if (!ahead) return;
    let timer: ReturnType<typeof setTimeout>;
    const slice = () => {
      const until = performance.now() + SLICE_MS;
      const done = standings.workAhead(lots, () => performance.now() > until);
      if (done) setSettledFor(lots);
      else timer = setTimeout(slice, SLICE_MS);
    };
    timer = setTimeout(slice, SLICE_MS);
    return () => clearTimeout(timer);
  }, [standings, lots, ahead]);
  return { standings, settled: settledFor === lots };
}
