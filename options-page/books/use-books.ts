import { createContext } from 'preact';
import { useContext, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type Bookkeeping, bookkeepingOf } from '../../src/domain/accounts/accounts.ts';
import type { ExpectedPurchase } from '../../src/domain/books/folder/expected.ts';
import { monthBefore, monthOf } from '../../src/domain/books/month.ts';
import type { PostedBooks } from '../../src/domain/books/post/post-months.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import type { BooksState } from '../../src/journal/states/books-state.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { expectedAt, type Folders, foldersOf, hasFolder, lotsInBooks } from '../../src/views/books/folders-of.ts';
import { postedBooks } from '../../src/views/books/posted-books.ts';

/** What every part of the Books screen looks at. */
export interface Books extends Folders {
  readonly state: BooksState;
  readonly posted: PostedBooks;
  readonly bookkeeping: Bookkeeping;
  readonly today: LocalDate;
  /** Every lot, those that are no longer watched too. */
  readonly lots: readonly LotState[];
}

/** Reads the books and keeps them in step with the store; null until they have been read once. */
export function useReadBooks(): Books | null {
  const { store, lots, complete, setup, say } = useWorkspace();
  const [state, setState] = useState<BooksState>();
  const [dropped, setDropped] = useState<readonly LotState[]>();
  const [expected, setExpected] = useState<ReadonlyMap<EntryId, ExpectedPurchase>>();
  const known = useRef(new Map<EntryId, ExpectedPurchase>());
  const today = dateIn(setup.store.zone, useNow(600_000));

  useEffect(() => {
    const fail = (error: unknown) => say(error instanceof Error ? error.message : String(error));
    const read = () => store.books().then(setState, fail);
    const gone = new Set<string>();
    const readDropped = async () => {
      const found = (await store.allLots()).filter((lot) => lot.dropped);
      for (const { id } of found) gone.add(id);
      setDropped(found);
    };
    read();
    readDropped().catch(fail);
    return store.subscribe((change) => {
      if (change.books || change.lots === 'many') read();
      if (change.lots === 'many' || change.lots.some((id) => gone.has(id))) readDropped().catch(fail);
    });
  }, [store, say]);

  const all = useMemo(() => [...lots, ...(dropped ?? [])], [lots, dropped]);

  useEffect(() => {
    // Before all lots are read the wins would be looked up twice.
    if (state === undefined || dropped === undefined || !complete) return;
    const booked = lotsInBooks(state);
    const wins = all.flatMap((lot) => {
      const at = hasFolder(lot, booked) ? lot.sale?.result?.entry : undefined;
      return at === undefined || known.current.has(at) ? [] : [{ lot, at }];
    });
    if (wins.length === 0) {
      setExpected((before) => before ?? new Map());
      return;
    }
    store.beliefs(wins.map(({ lot, at }) => ({ lot: lot.id, at }))).then(
      (beliefs) => {
        const found = wins.flatMap(({ lot }) => {
          const belief = beliefs.get(lot.id);
          return belief === undefined ? [] : [{ lot, belief }];
        });
        for (const [entry, purchase] of expectedAt(found, setup.store.zone)) known.current.set(entry, purchase);
        setExpected(new Map(known.current));
      },
      (error: unknown) => {
        say(String(error));
        setExpected((before) => before ?? new Map());
      },
    );
  }, [all, state, dropped, complete, store, setup, say]);

  return useMemo(() => {
    if (state === undefined || dropped === undefined || expected === undefined || !complete) return null;
    const folders = foldersOf(all, state, expected, setup, today);
    const bookkeeping = bookkeepingOf(setup);
    const posted = postedBooks(folders, state, bookkeeping, monthBefore(monthOf(today)));
    return { state, ...folders, posted, bookkeeping, today, lots: all };
  }, [state, dropped, complete, all, expected, setup, today]);
}

export const BooksContext = createContext<Books | null>(null);

/** @throws Error outside the Books screen: our own mistake. */
export function useBooks(): Books {
  const books = useContext(BooksContext);
  if (books === null) throw new Error('no books around this part');
  return books;
}
