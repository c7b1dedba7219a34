import { useMemo } from 'preact/hooks';
import type { BidState } from '../../domain/bid/bid-state.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { standingsUnder } from '../../views/lots/standing.ts';
import { useWorkspace } from '../workspace.ts';

/** What the bid on one lot really is. */
export function useBid(lot: LotState, now: number): BidState {
  const { setup } = useWorkspace();
  const { bids } = useMemo(() => standingsUnder(setup), [setup]);
  return bids.at(lot, now);
}
