import type { EntryId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { ReadTransaction } from '../connection/schema.ts';
import type { Slices } from './slices.ts';

/** Entries a request at most, and lots in them: an entry of an import is some 150 kB, which a browser unpacks in one go. */
const MOST = 200;
const LOTS = 1_000;
/** With the first page nothing is known of how heavy they are. */
const FIRST = 8;

/**
 * Goes through the journal in the order of the ids, a page at a time.
 * @param slices so that the page which waits for it can draw meanwhile
 * @throws Refused when the slices were stopped
 */
export async function eachEntry(tx: ReadTransaction, visit: (raw: Envelope) => void, slices?: Slices): Promise<void> {
  let after: EntryId | undefined;
  let size = FIRST;
  for (;;) {
    const range = after === undefined ? null : IDBKeyRange.lowerBound(after, true);
    const page = await tx.objectStore('entries').getAll(range, size);
    let weight = 0;
    for (const raw of page) {
      visit(raw);
      weight += weightOf(raw);
      if (slices?.took()) await slices.turn();
    }
    after = page.at(-1)?.id;
    if (page.length < size) return;
    // A page of heavy ones is followed by a small one; it grows again slowly, as the next may be heavy too.
    size = Math.max(1, Math.min(MOST, size * 4, Math.floor((LOTS * page.length) / weight)));
  }
}

/** Its lots, or one for any other. What comes from a damaged disk may be anything. */
function weightOf({ happening }: Envelope): number {
  const { lots } = happening as { readonly lots?: unknown };
  return Array.isArray(lots) ? Math.max(1, lots.length) : 1;
}
