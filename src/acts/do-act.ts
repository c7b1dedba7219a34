import type { LotId } from '../domain/lot/lot.ts';
import type { Outcome } from '../domain/outcome.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Entry } from '../journal/entry.ts';
import type { EntryId } from '../journal/ids.ts';
import type { Change } from '../journal/make-entry.ts';
import type { LotAct } from './act.ts';
import type { Circumstances, Decision } from './circumstances.ts';
import { decide } from './decide.ts';

/** What acts need of the store. */
export interface ActStore {
  /** Writes what is decided of the lot as it is at that very moment, so that two presses are never two bids. */
  readonly changeAfter: (
    id: LotId,
    decide: (lot: LotState, author: string) => readonly Change[],
  ) => Promise<Outcome<readonly Entry[]>>;
}

/** What came of an act. */
export type Done =
  /** It was kept; undoing the entries takes all of it back. */
  | { readonly as: 'kept'; readonly words: string; readonly entries: readonly EntryId[] }
  | Exclude<Decision, { readonly as: 'write' }>;

/** Does something about a lot: decides on the lot as the store has it, and writes all of it or nothing. */
export async function doAct(
  store: ActStore,
  id: LotId,
  act: LotAct,
  circumstances: Omit<Circumstances, 'author'>,
): Promise<Done> {
  let decision: Decision = { as: 'refuse', message: 'This lot is no longer on your list.' };
  const written = await store.changeAfter(id, (lot, author) => {
    decision = decide(lot, act, { ...circumstances, author });
    return decision.as === 'write' ? decision.changes : [];
  });
  if (!written.ok) return { as: 'refuse', message: written.message };
  return doneOf(decision, written.value);
}

function doneOf(decision: Decision, entries: readonly Entry[]): Done {
  if (decision.as !== 'write') return decision;
  return { as: 'kept', words: decision.words, entries: entries.map(({ id }) => id) };
}
