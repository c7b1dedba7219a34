import type { LotFacts } from '../domain/lot/lot.ts';
import { foldLot } from '../folds/fold-lots.ts';
import { foldSetup } from '../folds/fold-setup.ts';
import type { LotState } from '../folds/lot-state.ts';
import { countingInOrder } from '../folds/undo.ts';
import type { Entry } from '../journal/entry.ts';
import type { EntryId } from '../journal/ids.ts';
import type { SetupState } from '../journal/states/setup-state.ts';

/** What was known of a lot, and the setup in force, when an entry was written. */
export interface Belief {
  readonly facts: LotFacts;
  readonly setup: SetupState;
}

/**
 * When a lot was first noted as won, of what counts now: a hammer price that was corrected weeks later changes nothing in
 * what was believed at the win. Null when it never was.
 */
export function firstWin(aboutLot: readonly Entry[]): EntryId | null {
  const won = countingInOrder(aboutLot).find(
    ({ happening }) => happening.kind === 'result-noted' && happening.result.ended === 'won',
  );
  return won?.id ?? null;
}

/**
 * What was known of a lot when `at` was written: later entries, and later undos of earlier ones, change nothing in it.
 * @param born the lot as it came in
 * @param aboutLot every entry about the lot, undos included
 */
export function factsAt(at: EntryId, born: LotState, aboutLot: readonly Entry[]): LotFacts {
  return foldLot(born, countingInOrder(aboutLot.filter(({ id }) => id <= at))).facts;
}

/**
 * The setup that held when an entry was written, in the same sense. It is folded once for all wins between two changes,
 * and is the same object for all of them.
 * @param aboutSetup every entry about the setup, undos included
 */
export function setupsAt(aboutSetup: readonly Entry[]): (at: EntryId) => SetupState {
  const folded = new Map<number, SetupState>();
  return (at) => {
    const known = aboutSetup.filter(({ id }) => id <= at);
    const setup = folded.has(known.length) ? folded.get(known.length) : foldSetup(known);
    folded.set(known.length, setup ?? null);
    return setup ?? null;
  };
}

/**
 * What was believed by the entries that were known then.
 * @param born the lot as it came in
 * @param aboutLot every entry about the lot, undos included
 * @param aboutSetup every entry about the setup, undos included
 */
export function believedUntil(
  isKnown: (entry: Entry) => boolean,
  born: LotState,
  aboutLot: readonly Entry[],
  aboutSetup: readonly Entry[],
): Belief {
  return {
    facts: foldLot(born, countingInOrder(aboutLot.filter(isKnown))).facts,
    setup: foldSetup(aboutSetup.filter(isKnown)),
  };
}
