import { attempt } from '../../domain/attempt.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { lotsBornIn } from '../../folds/fold-lots.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Entry } from '../../journal/entry.ts';
import { type BelievedThen, believedAtClose } from './believed-at-close.ts';
import type { EntriesOfLots } from './entries-of-lots.ts';
import { setupsThen } from './setups-then.ts';

/** What was believed of each lot as its sale closed; one of which no end is noted is left out. Each entry is looked at a few times. */
export function beliefsAtClose({ setup, lots }: EntriesOfLots): Map<LotId, BelievedThen> {
  const setups = setupsThen(setup);
  const arrivals = new Map<Entry, ReadonlyMap<LotId, LotState>>();
  const bornIn = (arrival: Entry) => {
    const born = arrivals.get(arrival) ?? new Map(lotsBornIn(arrival).map((lot) => [lot.id, lot]));
    arrivals.set(arrival, born);
    return born;
  };
  const found = lots.flatMap(({ id, arrival, about }): [LotId, BelievedThen][] => {
    const born = bornIn(arrival).get(id);
    // One lot whose past can't be told costs only itself: it is missing in the list as one without an end is.
    const then = born && attempt(() => believedAtClose(born, arrival.author, about, setups));
    return then?.ok && then.value !== null ? [[id, then.value]] : [];
  });
  return new Map(found);
}
