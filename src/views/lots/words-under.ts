import { attempt, type CantWorkOut } from '../../domain/attempt.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { closeLook } from './close-look.ts';
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
    const before = known.get(lot);
    if (before !== undefined) return before;
    const found = attempt(() => rowWords(lot, { standing: of(lot), bids, doubts: doubtsOf(lot), setup }));
    const words = found.ok ? found.value : bareRow(lot, setup, found);
    known.set(lot, words);
    return words;
  };
}

/** As much of a row as there is of a lot that can't be put into words: above all when it closes. */
function bareRow(lot: LotState, setup: Setup, { short }: CantWorkOut): RowWords {
  const title = attempt(() => lotTitle(lot.facts));
  const close = attempt(() => lot.facts.close && closeLook(lot.facts.close, setup, lot.addedAt));
  return {
    id: lot.id,
    title: title.ok ? title.value : 'A lot that can’t be shown',
    name: title.ok ? title.value : 'A lot that can’t be shown',
    sub: '',
    close: close.ok ? close.value : { instant: lot.facts.close?.instant ?? lot.addedAt, when: '', rush: '' },
    maxBid: { words: 'can’t be worked out', as: 'missing' },
    todo: { words: `Can’t be worked out: ${short}`, as: 'act', act: 'sheet' },
    bid: '',
    ended: { words: 'closed' },
  };
}
