import type { Setup } from '../../domain/setup/setup.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { listingDoubts } from './listing-doubts.ts';
import { type RowWords, rowWords } from './row-words.ts';
import type { LotWorks } from './standing.ts';

/** The words of lots' rows, each found once. `lots` are all among which the same car may stand twice. */
export function wordsUnder(
  setup: Setup,
  { of, bids }: LotWorks,
  lots: readonly LotState[],
): (lot: LotState) => RowWords {
  const doubtsOf = listingDoubts(lots, setup);
  const known = new WeakMap<LotState, RowWords>();
  return (lot) => {
    const words = known.get(lot) ?? rowWords(lot, { standing: of(lot), bids, doubts: doubtsOf(lot), setup });
    known.set(lot, words);
    return words;
  };
}
