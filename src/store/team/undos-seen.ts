import type { LotId } from '../../domain/lot/lot.ts';
import { lotsBornIn } from '../../folds/fold-lots.ts';
import { asUndo, type Undo, undoneIds } from '../../folds/undo.ts';
import type { Entry } from '../../journal/entry.ts';
import type { EntryId } from '../../journal/ids.ts';
import type { ReadTransaction } from '../connection/schema.ts';
import { known } from '../views/refold.ts';

/**
 * The undos of a journal, and the lots whose arrival was ever undone. There are thousands after some years, so they are read
 * once for many batches. Another tab may write in between, or put another journal in the place of this one: whether they are
 * still all is asked in each transaction.
 */
export class UndosSeen {
  private undos = new Map<EntryId, Undo>();
  /** How many entries the index of undos has, those that this version can't read among them. */
  private counted = 0;
  private readonly gone = new Set<LotId>();

  /** Every entry that does not count. */
  undone(): Set<EntryId> {
    return undoneIds(this.undos.values());
  }

  /** Whether a lot came in by an entry that was undone at some time: its view may be gone. */
  wasGone(id: LotId): boolean {
    return this.gone.has(id);
  }

  /** Reads what was written since, or all of it where something is not as it was. */
  async refresh(tx: ReadTransaction): Promise<void> {
    const index = tx.objectStore('entries').index('undoes');
    const last = [...this.undos.keys()].at(-1);
    const isSame = last === undefined || (await tx.objectStore('entries').getKey(last)) !== undefined;
    const count = await index.count();
    if (isSame && count === this.counted) return;
    this.undos = new Map();
    this.gone.clear();
    await this.add(tx, known(await index.getAll()));
    this.counted = count;
  }

  /** Entries that came into the journal: undos among them, and arrivals that an undo was waiting for. */
  async add(tx: ReadTransaction, entries: readonly Entry[]): Promise<void> {
    const fresh = entries.flatMap((entry) => asUndo(entry) ?? []);
    for (const undo of fresh) this.undos.set(undo.id, undo);
    this.counted += fresh.length;
    const targets = await Promise.all(fresh.map(({ target }) => tx.objectStore('entries').get(target)));
    for (const born of known(targets.flatMap((raw) => raw ?? [])).flatMap(lotsBornIn)) this.gone.add(born.id);
    const arrivals = entries.filter(({ happening }) => happening.kind === 'lots-added');
    if (arrivals.length === 0) return;
    const waited = new Set([...this.undos.values()].map(({ target }) => target));
    for (const arrival of arrivals)
      if (waited.has(arrival.id)) for (const { id } of lotsBornIn(arrival)) this.gone.add(id);
  }
}
