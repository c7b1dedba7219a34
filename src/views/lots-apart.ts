import { attemptEach, type CantWorkOut } from '../domain/attempt.ts';
import type { LotState } from '../folds/lot-state.ts';

/** A lot that a screen can't work out, and why; it is named there beside the others, which stand. */
export interface LotApart {
  readonly lot: LotState;
  readonly why: CantWorkOut;
}

/** What was made of each of many lots, and those of which nothing could be made. */
export interface EachLot<Value> {
  readonly done: readonly Value[];
  readonly apart: readonly LotApart[];
}

/** Asks for each lot on its own. */
export function eachLot<Value>(lots: Iterable<LotState>, work: (lot: LotState) => Value): EachLot<Value> {
  const { done, failed } = attemptEach(lots, work);
  return { done, apart: failed.map(({ item, why }) => ({ lot: item, why })) };
}
