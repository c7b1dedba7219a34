import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { PastLot } from '../../src/domain/learn/happened.ts';
import { type Money, moneyOf, type Scores, scoresOf } from '../../src/domain/learn/learn-report.ts';
import type { Looking } from '../../src/domain/learn/scores/scored.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { beliefsAtClose } from '../../src/views/learn/beliefs-at-close.ts';
import type { BelievedThen } from '../../src/views/learn/believed-at-close.ts';
import { type ContextOf, contextsThen, latestFirst, pastLots } from '../../src/views/learn/past-lots.ts';
import type { LotApart } from '../../src/views/lots-apart.ts';
import { type Books, useReadBooks } from '../books/use-books.ts';
import { useSlices } from './corrections/use-slices.ts';

/** What every part of the Learn screen looks at. */
export interface Learning {
  readonly past: readonly PastLot[];
  readonly apart: readonly LotApart[];
  readonly looking: Looking;
  readonly scores: Scores;
  readonly money: Money;
}

/** Reads every past lot with what was believed of it, and keeps it in step with the store; null until it was read once. */
export function useLearning(): Learning | null {
  const { setup, store, say } = useWorkspace();
  const books = useReadBooks();
  const [beliefs, setBeliefs] = useState<ReadonlyMap<LotId, BelievedThen>>();
  const read = useRef(new Map<LotId, LotState>());
  const known = useRef(new Map<LotId, BelievedThen>());
  const { zone } = setup.store;
  const contextOf = useMemo(() => contextsThen(zone), [zone]);
  const lots = books?.lots;

  useEffect(() => {
    if (lots === undefined) return;
    let current = true;
    const ended = lots.filter((lot) => lot.sale?.result !== undefined);
    const changed = ended.filter((lot) => read.current.get(lot.id) !== lot);
    store.entriesOf(changed.map(({ id }) => id)).then(
      (entries) => {
        if (!current) return;
        const found = beliefsAtClose(entries);
        for (const lot of changed) {
          const belief = found.get(lot.id);
          if (belief === undefined) known.current.delete(lot.id);
          else known.current.set(lot.id, belief);
          read.current.set(lot.id, lot);
        }
        setBeliefs(new Map(known.current));
      },
      (error: unknown) => {
        say(error instanceof Error ? error.message : String(error));
        setBeliefs((before) => before ?? new Map());
      },
    );
    return () => {
      current = false;
    };
  }, [lots, store, say]);

  const halfLifeDays = setup.corrections?.halfLifeDays;
  const begin = useMemo(
    () => (books === null || beliefs === undefined ? null : () => learn(books, beliefs, contextOf, halfLifeDays)),
    [books, beliefs, contextOf, halfLifeDays],
  );
  const { result, failed } = useSlices(begin);
  useEffect(() => {
    if (failed !== undefined) say(failed);
  }, [failed, say]);
  // What was found before stays in sight until it is found anew.
  const last = useRef<Learning | null>(null);
  last.current = result ?? last.current;
  return last.current;
}

/** Lots worked out between two looks at the clock: a worksheet takes a millisecond or two. */
const PIECE = 4;

function* learn(
  { lots, folders, apart, today }: Books,
  beliefs: ReadonlyMap<LotId, BelievedThen>,
  contextOf: ContextOf,
  halfLifeDays: number | undefined,
): Generator<number, Learning> {
  const folderOf = new Map(folders.map((folder) => [folder.lot, folder]));
  const past: PastLot[] = [];
  const leftOut = [...apart];
  for (let i = 0; i < lots.length; i += PIECE) {
    yield i;
    const some = lots.slice(i, i + PIECE);
    const own = some.flatMap(({ id }) => folderOf.get(id) ?? []);
    const found = pastLots(some, beliefs, own, contextOf, today);
    past.push(...found.past);
    leftOut.push(...found.apart);
  }
  past.sort(latestFirst);
  const looking: Looking = { today, halfLifeDays };
  yield lots.length;
  const scores = scoresOf(past, looking);
  yield lots.length;
  return { past, apart: leftOut, looking, scores, money: moneyOf(past, today) };
}
