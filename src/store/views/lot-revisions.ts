import { lotsBornIn } from '../../folds/fold-lots.ts';
import { LotRevisions } from '../../folds/lot-revisions.ts';
import type { GoneLot } from '../../folds/taken-up.ts';
import { readEntry } from '../../journal/read-entry.ts';
import { eachEntry } from '../journal/each-entry.ts';
import type { Session } from '../write/session.ts';

/** Goes through the whole journal once; some tenths of a second where there are tens of thousands of lots. */
export function lotRevisions(session: Session): Promise<LotRevisions> {
  return session.connection.read(async (tx) => {
    const revisions = new LotRevisions();
    await eachEntry(tx, (raw) => revisions.add(raw));
    return revisions;
  });
}

/** The lots whose arrival was undone, as they came in; those that only a newer version can read are left out. */
export function goneLots(session: Session, revisions: LotRevisions): Promise<GoneLot[]> {
  const gone = revisions.gone();
  if (gone.length === 0) return Promise.resolve([]);
  return session.connection.read(async (tx) => {
    const entries = tx.objectStore('entries');
    const found = await Promise.all(
      gone.map(async ({ arrival, undone }) => {
        const read = readEntry(await entries.get(arrival));
        return read.as === 'known' ? lotsBornIn(read.entry).map((lot): GoneLot => ({ lot, undone })) : [];
      }),
    );
    return found.flat();
  });
}
