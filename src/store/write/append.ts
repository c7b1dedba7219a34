import { type Outcome, ok } from '../../domain/outcome.ts';
import type { Entry } from '../../journal/entry.ts';
import { happeningSchema } from '../../journal/happening.ts';
import {
  type Change,
  makeEntry,
  SALT_BYTES,
  type SealedChange,
  sealedChange,
  type WritingHead,
} from '../../journal/make-entry.ts';
import { firstIssue } from '../../journal/read-entry.ts';
import { ID_RANDOM_BYTES } from '../../journal/sortable-id.ts';
import type { Head, WriteTransaction } from '../connection/schema.ts';
import { forgetFirstFolders } from '../views/first-folders.ts';
import { forgetFirstRows } from '../views/first-rows.ts';
import { changePlanBasis } from '../views/kept-plan.ts';
import { updateViews } from '../views/update-views.ts';
import { readHead, writeHead } from './head.ts';
import { Refused, refusalFor } from './refused.ts';
import type { Session } from './session.ts';
import { Touched } from './touched.ts';
import { addAll } from './write-all.ts';

/**
 * Writes changes as entries at the end of this browser's chain and brings the views up to date, in one transaction:
 * all of it happens or none. Transactions over the same stores queue up, so that two tabs and the background can write
 * at the same moment and the chain stays one.
 */
export function append(session: Session, changes: readonly Change[]): Promise<Outcome<readonly Entry[]>> {
  return appendWith(session, async () => changes);
}

/** As `append`, with changes that depend on what the transaction finds. No change at all is a success as well. */
export async function appendWith(
  session: Session,
  decide: (tx: WriteTransaction) => Promise<readonly Change[]>,
): Promise<Outcome<readonly Entry[]>> {
  const touched = new Touched();
  try {
    const entries = await session.connection.write(async (tx) => {
      const changes = await decide(tx);
      const ready = changes.map((change) => sealedChange(checkedChange(change), session.random(SALT_BYTES)));
      if (ready.length === 0) return [];
      return (await writeEntries(session, tx, { head: await readHead(tx), changes: ready, touched })).entries;
    });
    if (entries.length > 0) session.feed.announce(touched.asChange());
    return ok(entries);
  } catch (error) {
    return { ok: false, ...refusalFor(error) };
  }
}

/**
 * The last check before something that can never be changed: an entry that its own schema refuses could not be restored
 * from a backup. It also fills in defaults. What takes long may have it done before its transaction.
 * @throws Refused when a value is not valid
 */
export function checkedChange({ subject, happening }: Change): Change {
  const checked = happeningSchema.safeParse(happening);
  if (checked.success) return { subject, happening: checked.data };
  throw new Refused('not-valid', `Nothing was saved, because a value is not valid (${firstIssue(checked.error)}).`);
}

interface Writing {
  /** The end of the chain. */
  readonly head: Head;
  readonly changes: readonly SealedChange[];
  readonly touched: Touched;
}

/** Asks for everything that the changes write; gives back the entries and the end of the chain after them. */
export async function writeEntries(
  session: Session,
  tx: WriteTransaction,
  { head: { author, ...start }, changes, touched }: Writing,
): Promise<{ entries: readonly Entry[]; head: Head }> {
  let place: WritingHead = start;
  const entries: Entry[] = [];
  for (const change of changes) {
    const random = session.random(ID_RANDOM_BYTES);
    const made = makeEntry(place, change, { at: session.now(), author, random });
    // `add`, not `put`: an entry is never written over.
    addAll(tx.objectStore('entries'), [made.entry]);
    await updateViews(tx, made.entry, touched);
    place = made.head;
    entries.push(made.entry);
  }
  if (touched.lots.size > 0 || touched.setup) forgetFirstRows(tx);
  if (touched.folders || touched.setup || touched.books) forgetFirstFolders(tx);
  if ((touched.lots.size > 0 || touched.setup || touched.books) && place.lastId !== null)
    changePlanBasis(tx, place.lastId);
  const head = { ...place, author };
  writeHead(tx, head);
  return { entries, head };
}
