import type { Outcome } from '../../domain/outcome.ts';
import type { Entry } from '../../journal/entry.ts';
import { rowOf } from '../../journal/happening.ts';
import type { EntryId } from '../../journal/ids.ts';
import type { Change } from '../../journal/make-entry.ts';
import { readEntry } from '../../journal/read-entry.ts';
import type { WriteTransaction } from '../connection/schema.ts';
import { everyUndone } from '../views/refold.ts';
import { appendWith } from './append.ts';
import { Refused } from './refused.ts';
import type { Session } from './session.ts';

/**
 * Writes that entries no longer count, all in one transaction. To bring one back, undo the entry that this returns.
 * Refused when one is not in the journal (`no-such-entry`), no longer counts as it is (`already-undone`), is of a kind
 * that only a newer version understands (`newer-entry`), or of one that nobody undoes (`not-to-undo`).
 */
export function undoEntries(session: Session, ids: readonly EntryId[]): Promise<Outcome<readonly Entry[]>> {
  return appendWith(session, async (tx) => {
    const undone = await everyUndone(tx);
    const latestFirst = [...new Set(ids)].sort().reverse();
    return Promise.all(latestFirst.map((id) => undoOf(tx, id, undone)));
  });
}

async function undoOf(tx: WriteTransaction, id: EntryId, undone: ReadonlySet<EntryId>): Promise<Change> {
  if (undone.has(id)) throw new Refused('already-undone', 'This was already undone. Nothing was saved.');
  const raw = await tx.objectStore('entries').get(id);
  if (raw === undefined) throw new Refused('no-such-entry', 'What you want to undo is not in this browser’s journal.');
  const read = readEntry(raw);
  if (read.as !== 'known')
    throw new Refused('newer-entry', 'A newer Headroom wrote this. Update Headroom, then undo it.');
  if (rowOf(read.entry.happening).undo === 'never')
    throw new Refused('not-to-undo', 'What this computer has shown can’t be undone. Nothing was written.');
  return { subject: read.entry.subject, happening: { kind: 'undone', entry: id } };
}
