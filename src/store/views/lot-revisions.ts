import { LotRevisions } from '../../folds/lot-revisions.ts';
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
