import type { LotId } from '../../domain/lot/lot.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { foldBooks } from '../../folds/fold-books.ts';
import { lotsBornIn } from '../../folds/fold-lots.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Entry } from '../../journal/entry.ts';
import type { EntryId } from '../../journal/ids.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import { BOOKS, SETUP, subjectOfLot } from '../../journal/subject.ts';
import { type Belief, believedUntil, factsAt, firstWin, setupsAt } from '../../views/belief-at.ts';
import type { EntriesOfLots } from '../../views/learn/entries-of-lots.ts';
import type { ReadTransaction } from '../connection/schema.ts';
import type { Session } from '../write/session.ts';
import { known } from './refold.ts';

/**
 * The books, folded from their entries at each reading: a few thousand a year, which takes less time than keeping a view
 * of them up to date would save.
 */
export function readBooks(session: Session): Promise<BooksState> {
  return session.connection.read(async (tx) => foldBooks(await about(tx, BOOKS)));
}

/**
 * For lots, what was believed of each when it was first noted as won, or when the entry that is named was written where it
 * never was; a lot that is not here is left out.
 */
export function readBeliefs(
  session: Session,
  wanted: Iterable<{ readonly lot: LotId; readonly at: EntryId }>,
): Promise<Map<LotId, Belief>> {
  return session.connection.read((tx) => beliefsIn(tx, wanted));
}

/** The same within a transaction. */
export async function beliefsIn(
  tx: ReadTransaction,
  wanted: Iterable<{ readonly lot: LotId; readonly at: EntryId }>,
): Promise<Map<LotId, Belief>> {
  const setupAt = setupsAt(await about(tx, SETUP));
  const bornOf = births(tx);
  const believed = async ({ lot, at }: { readonly lot: LotId; readonly at: EntryId }) => {
    const [now, own] = await Promise.all([tx.objectStore('lots').get(lot), about(tx, subjectOfLot(lot))]);
    const born = now && (await bornOf(now.bornIn)).get(lot);
    if (born === undefined) return null;
    const win = firstWin(own) ?? at;
    return [lot, { facts: factsAt(win, born, own), setup: setupAt(win) }] as const;
  };
  const all = await Promise.all([...wanted].map(believed));
  return new Map(all.filter((one) => one !== null));
}

/** The entries about the setup and about some lots, each with the entry that brought it in; a lot that is not here is left out. */
export function readEntriesOf(session: Session, lots: Iterable<LotId>): Promise<EntriesOfLots> {
  return session.connection.read(async (tx) => {
    const arrivals = new Map<EntryId, Promise<Entry[]>>();
    const arrivalOf = (id: EntryId): Promise<Entry[]> => {
      const found =
        arrivals.get(id) ??
        tx
          .objectStore('entries')
          .get(id)
          .then((raw) => (raw === undefined ? [] : known([raw])));
      arrivals.set(id, found);
      return found;
    };
    const of = async (id: LotId) => {
      const [now, own] = await Promise.all([tx.objectStore('lots').get(id), about(tx, subjectOfLot(id))]);
      const [arrival] = now === undefined ? [] : await arrivalOf(now.bornIn);
      return arrival === undefined ? [] : { id, arrival, about: own };
    };
    return { setup: await about(tx, SETUP), lots: (await Promise.all([...lots].map(of))).flat() };
  });
}

/** What was believed of a lot at a moment; null when it was not here then. */
export function readBeliefAt(session: Session, lot: LotId, at: Instant): Promise<Belief | null> {
  return session.connection.read(async (tx) => {
    const [now, own, setup] = await Promise.all([
      tx.objectStore('lots').get(lot),
      about(tx, subjectOfLot(lot)),
      about(tx, SETUP),
    ]);
    const born = now && (await births(tx)(now.bornIn)).get(lot);
    return born === undefined || born.addedAt > at ? null : believedUntil((entry) => entry.at <= at, born, own, setup);
  });
}

/** The lots of an arrival, which is read once however many of them are asked for: an import is over a hundred lots an entry. */
function births(tx: ReadTransaction): (entry: EntryId) => Promise<ReadonlyMap<LotId, LotState>> {
  const read = new Map<EntryId, Promise<ReadonlyMap<LotId, LotState>>>();
  const readOne = async (entry: EntryId): Promise<ReadonlyMap<LotId, LotState>> => {
    const raw = await tx.objectStore('entries').get(entry);
    const [birth] = raw === undefined ? [] : known([raw]);
    return new Map(birth === undefined ? [] : lotsBornIn(birth).map((lot) => [lot.id, lot]));
  };
  return (entry) => {
    const found = read.get(entry) ?? readOne(entry);
    read.set(entry, found);
    return found;
  };
}

async function about(tx: ReadTransaction, subject: string) {
  return known(await tx.objectStore('entries').index('subject').getAll(subject));
}
