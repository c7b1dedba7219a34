import { type Outcome, ok } from '../domain/outcome.ts';
import { type Entry, happeningSchema } from '../journal/entry.ts';
import { type Change, makeEntry, type WritingHead } from '../journal/make-entry.ts';
import { firstIssue } from '../journal/read-entry.ts';
import { ID_RANDOM_BYTES } from '../journal/sortable-id.ts';
import type { Durability } from './connection.ts';
import { readHead, writeHead } from './head.ts';
import { Refused, refusalFor } from './refused.ts';
import type { WriteTransaction } from './schema.ts';
import type { Session } from './session.ts';
import { Touched } from './touched.ts';
import { updateViews } from './update-views.ts';

/**
 * Writes changes as entries at the end of this browser's chain and brings the views up to date, in one transaction:
 * all of it happens or none. Transactions over the same stores queue up, so that two tabs and the background can write
 * at the same moment and the chain stays one.
 */
export function append(
  session: Session,
  changes: readonly Change[],
  durability?: Durability,
): Promise<Outcome<readonly Entry[]>> {
  return appendWith(session, async () => changes, durability);
}

/** As `append`, with changes that depend on what the transaction finds. No change at all is a success as well. */
export async function appendWith(
  session: Session,
  decide: (tx: WriteTransaction) => Promise<readonly Change[]>,
  durability?: Durability,
): Promise<Outcome<readonly Entry[]>> {
  const touched = new Touched();
  try {
    const entries = await session.connection.write(async (tx) => {
      const changes = await decide(tx);
      return writeEntries(session, tx, changes.map(checked), touched);
    }, durability);
    if (entries.length > 0) session.feed.announce(touched.asChange());
    return ok(entries);
  } catch (error) {
    return { ok: false, ...refusalFor(error) };
  }
}

/**
 * The last check before something that can never be changed: an entry that its own schema refuses could not be restored
 * from a backup. It also fills in defaults.
 */
function checked(change: Change): Change {
  const happening = happeningSchema.safeParse(change.happening);
  if (happening.success) return { subject: change.subject, happening: happening.data };
  throw new Refused('not-valid', `Nothing was written, because a value is not valid (${firstIssue(happening.error)}).`);
}

async function writeEntries(
  session: Session,
  tx: WriteTransaction,
  changes: readonly Change[],
  touched: Touched,
): Promise<Entry[]> {
  if (changes.length === 0) return [];
  const head = await readHead(tx);
  let place: WritingHead = head;
  const entries: Entry[] = [];
  for (const change of changes) {
    const random = session.random(ID_RANDOM_BYTES);
    const made = makeEntry(place, change, { at: session.now(), author: head.author, random });
    // `add`, not `put`: an entry is never written over.
    await tx.objectStore('entries').add(made.entry);
    await updateViews(tx, made.entry, touched);
    place = made.head;
    entries.push(made.entry);
  }
  await writeHead(tx, { ...place, author: head.author });
  return entries;
}
