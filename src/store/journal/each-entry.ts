import type { EntryId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { ReadTransaction } from '../connection/schema.ts';

/** Entries a request: an entry of an import is some 150 kB. */
const PAGE = 200;

/** Goes through the journal in the order of the ids, a page at a time. */
export async function eachEntry(tx: ReadTransaction, visit: (raw: Envelope) => void): Promise<void> {
  let after: EntryId | undefined;
  for (;;) {
    const range = after === undefined ? null : IDBKeyRange.lowerBound(after, true);
    const page = await tx.objectStore('entries').getAll(range, PAGE);
    for (const raw of page) visit(raw);
    after = page.at(-1)?.id;
    if (page.length < PAGE) return;
  }
}
