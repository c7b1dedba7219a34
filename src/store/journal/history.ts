import type { LotId } from '../../domain/lot/lot.ts';
import { type Happening, rowOf } from '../../journal/happening.ts';
import type { EntryId } from '../../journal/ids.ts';
import { type Envelope, type ReadEntry, readEntry } from '../../journal/read-entry.ts';
import { BOOKS, subjectOfLot } from '../../journal/subject.ts';
import type { ReadTransaction } from '../connection/schema.ts';
import { everyUndone } from '../views/refold.ts';
import type { Session } from '../write/session.ts';

/** One entry of a history. */
export interface HistoryItem {
  readonly id: EntryId;
  readonly read: ReadEntry;
  /** False when it was undone. */
  readonly counts: boolean;
}

/** Everything the journal says about a lot, the earliest first: how it came in, changes, and what was undone. */
export function historyOfLot(session: Session, id: LotId): Promise<HistoryItem[]> {
  return session.connection.read(async (tx) => {
    const about = await tx.objectStore('entries').index('subject').getAll(subjectOfLot(id));
    const lot = await tx.objectStore('lots').get(id);
    const birth = lot && (await tx.objectStore('entries').get(lot.bornIn));
    const raws = birth === undefined ? about : [birth, ...(await undosOf(tx, birth)), ...about];
    return items(raws, await everyUndone(tx));
  });
}

/** The same, and what was booked for it: of each booking only what is for this lot. */
export async function lifeOfLot(session: Session, id: LotId): Promise<HistoryItem[]> {
  const own = await historyOfLot(session, id);
  const booked = await session.connection.read(async (tx) => {
    const all = items(await tx.objectStore('entries').index('subject').getAll(BOOKS), await everyUndone(tx));
    const kept = new Map<EntryId, HistoryItem>();
    for (const item of all) {
      const { read } = item;
      if (read.as !== 'known') continue;
      const { happening } = read.entry;
      // An undo comes after what it undoes.
      const shown = happening.kind === 'undone' && kept.has(happening.entry) ? happening : bookedFor(id, happening);
      if (shown !== null) kept.set(item.id, { ...item, read: { ...read, entry: { ...read.entry, happening: shown } } });
    }
    return [...kept.values()];
  });
  return [...own, ...booked].sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** What an entry of the books says of one lot; null when it says nothing of it. */
function bookedFor(id: LotId, happening: Happening): Happening | null {
  const row = rowOf(happening);
  return row.about === 'books' ? row.ofLot(happening, id) : null;
}

/** Everything that ever set the setup, the earliest first. */
export function historyOfSubject(session: Session, subject: string): Promise<HistoryItem[]> {
  return session.connection.read(async (tx) =>
    items(await tx.objectStore('entries').index('subject').getAll(subject), await everyUndone(tx)),
  );
}

/** The undos of an entry, and the undos of those. They are filed under the batch, not under each lot in it. */
async function undosOf(tx: ReadTransaction, entry: Envelope): Promise<Envelope[]> {
  const direct = await tx.objectStore('entries').index('undoes').getAll(entry.id);
  const further = await Promise.all(direct.filter(({ id }) => id > entry.id).map((undo) => undosOf(tx, undo)));
  return [...direct, ...further.flat()];
}

function items(raws: readonly Envelope[], undone: ReadonlySet<EntryId>): HistoryItem[] {
  return raws
    .map((raw) => ({ id: raw.id, read: readEntry(raw), counts: !undone.has(raw.id) }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}
