import { foldSetup, setupAfter } from '../../folds/fold-setup.ts';
import { asUndo } from '../../folds/undo.ts';
import type { Entry } from '../../journal/entry.ts';
import type { SetupState } from '../../journal/states/setup-state.ts';

/** Tells which setup was in force at any moment: the same object for as long as none was saved. */
export interface SetupsThen {
  /** By what was written up to a moment. */
  readonly at: (moment: number) => SetupState;
  /** By what was written before an entry. */
  readonly before: (entry: Pick<Entry, 'id'>) => SetupState;
}

/**
 * Works the setups out in the order of the entries, each from the one before; only an undo makes it begin again, since that
 * changes what came earlier. So many moments cost hardly more than one.
 * @param aboutSetup every entry about the setup, undos included, in any order
 */
export function setupsThen(aboutSetup: readonly Entry[]): SetupsThen {
  const inOrder = [...new Map(aboutSetup.map((entry) => [entry.id, entry])).values()].sort((a, b) =>
    a.id < b.id ? -1 : 1,
  );
  const after: SetupState[] = [null];
  for (const [i, entry] of inOrder.entries()) {
    const undoes = asUndo(entry) !== null;
    after.push(undoes ? foldSetup(inOrder.slice(0, i + 1)) : setupAfter(after[i] ?? null, entry));
  }
  const times = inOrder.map(({ at }) => at);
  const latest = times.map(runningMost(Math.max, Number.NEGATIVE_INFINITY));
  const earliestFrom = times.toReversed().map(runningMost(Math.min, Number.POSITIVE_INFINITY)).reverse();
  return {
    at(moment) {
      const known = countUpTo(latest.length, (i) => (latest[i] ?? 0) <= moment);
      // A clock that was put back leaves entries whose times do not rise with their ids.
      const orderly = (earliestFrom[known] ?? Number.POSITIVE_INFINITY) > moment;
      return orderly ? (after[known] ?? null) : foldSetup(inOrder.filter(({ at }) => at <= moment));
    },
    before: ({ id }) => after[countUpTo(inOrder.length, (i) => (inOrder[i]?.id ?? '') < id)] ?? null,
  };
}

function runningMost(most: (a: number, b: number) => number, start: number): (value: number) => number {
  let so = start;
  return (value) => {
    so = most(so, value);
    return so;
  };
}

/** How many of the first `size` places hold, where all that hold come first; by halving. */
function countUpTo(size: number, holds: (i: number) => boolean): number {
  let [low, high] = [0, size];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) low = middle + 1;
    else high = middle;
  }
  return low;
}
