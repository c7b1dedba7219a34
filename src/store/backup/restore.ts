import { type Outcome, refuse } from '../../domain/outcome.ts';
import type { EntryId } from '../../journal/ids.ts';
import { DEVICE_RANDOM_BYTES, newDeviceId } from '../../journal/sortable-id.ts';
import type { Head, WriteTransaction } from '../connection/schema.ts';
import type { LongWork, Slices } from '../journal/slices.ts';
import { keepSignedHeads, wellSigned } from '../signing/signed-heads.ts';
import { keepStamps } from '../signing/stamps.ts';
import { foldIntoViews } from '../views/fold-into-views.ts';
import { changePlanBasis } from '../views/kept-plan.ts';
import { freshHead, headWhereItEnds, lastIdOf, readHead, writeHead } from '../write/head.ts';
import { Refused } from '../write/refused.ts';
import type { Session } from '../write/session.ts';
import { EVERYTHING } from '../write/touched.ts';
import { tryWrite } from '../write/try-write.ts';
import { addInSlices } from '../write/write-all.ts';
import { compareWithJournal, slicesIn } from './compare-with-journal.ts';
import type { Backup } from './read-backup.ts';
import type { RestoreChanges } from './what-changes.ts';

export interface RestoreOptions extends LongWork {
  /**
   * `merge` adds the entries that are not here and loses nothing; into an empty store it is a plain restore.
   * `replace` throws away what is only here: the caller has shown the user how much that is (previewRestore tells), and asked.
   */
  readonly mode: 'merge' | 'replace';
  /** Take the file although its chains are broken; the caller has shown the findings to the user, and asked. */
  readonly despiteFindings?: boolean;
}

/** What a restore did. */
export interface Restored {
  /** Entries that came in. */
  readonly added: number;
  /** Entries that were here already. */
  readonly same: number;
  /** Attached files that came in, or were here already and are surely whole now. */
  readonly files: number;
  /** Entries that were only here, and were thrown away; always 0 for a merge. */
  readonly removed: number;
  /** What a merge changed; for a replacement, what the file had that was not here. */
  readonly changes: RestoreChanges;
}

/**
 * Brings a backup into the store: all of it, or nothing at all, also when it is stopped. What is added keeps its author, device and hash; this
 * browser keeps its own device id and continues its own chain where the restored journal leaves it.
 *
 * One exception keeps chains from forking: when a replacement throws away entries of this browser's own chain, another
 * file may still hold them. Then it begins a new chain under a new device id.
 */
export async function restore(
  session: Session,
  backup: Backup,
  { mode, despiteFindings = false, ...work }: RestoreOptions,
): Promise<Outcome<Restored>> {
  const unacceptable = backup.findings.find(({ fault }) => !despiteFindings || fault === 'twice' || fault === 'forked');
  if (unacceptable !== undefined)
    return refuse(
      'broken-chain',
      `The journal in this backup was changed after it was written. ${unacceptable.message}`,
    );
  const signed = await wellSigned(backup.header.heads);
  const restored = await tryWrite(session, async (tx) => {
    await keepSignedHeads(tx, signed);
    const here = await tx.objectStore('entries').count();
    // Each entry here is compared and folded, each of the file is compared, written and folded.
    const slices = slicesIn(tx, { ...work, total: 2 * here + 3 * backup.entries.length + backup.files.size });
    const restored = await restoreIn(session, tx, backup, { mode, slices });
    const { header } = backup;
    await keepStamps(tx, 'stamps' in header ? (header.stamps ?? []) : []);
    return restored;
  });
  if (restored.ok) session.feed.announce(EVERYTHING);
  return restored;
}

async function restoreIn(
  session: Session,
  tx: WriteTransaction,
  backup: Backup,
  { mode, slices }: { readonly mode: RestoreOptions['mode']; readonly slices: Slices },
): Promise<Restored> {
  const { same, onlyHere, conflict, changes } = await compareWithJournal(tx, backup, slices);
  const entries = tx.objectStore('entries');
  if (mode === 'merge' && conflict !== null) throw new Refused(conflict.reason, conflict.message);
  if (mode === 'replace') await entries.clear();
  const kept: ReadonlySet<EntryId> = mode === 'merge' ? same : new Set();
  await addInSlices(
    entries,
    backup.entries.filter(({ id }) => !kept.has(id)),
    slices,
  );
  await bringFiles(tx, backup, { mode, slices });
  const head = await headAfter(session, tx, backup, mode);
  writeHead(tx, head);
  await foldIntoViews(tx, slices);
  // A plan that is being made just now is of what was here before.
  changePlanBasis(tx, `restored ${await tx.objectStore('entries').count()}`);
  return {
    added: backup.entries.length - same.size,
    same: same.size,
    files: backup.files.size,
    removed: mode === 'replace' ? onlyHere : 0,
    changes,
  };
}

/** A replacement keeps what the backup's entries name: the backup may lack a file that is whole here. */
async function bringFiles(
  tx: WriteTransaction,
  { files, named }: Backup,
  { mode, slices }: { readonly mode: RestoreOptions['mode']; readonly slices: Slices },
): Promise<void> {
  const store = tx.objectStore('files');
  const here = await store.getAllKeys();
  if (mode === 'replace') for (const hash of here) if (!files.has(hash) && !named.has(hash)) await store.delete(hash);
  // Those that are here are written again: the disk may have damaged them, and these are surely whole.
  for (const [hash, blob] of files) {
    await store.put({ hash, blob });
    if (slices.took()) await slices.turn();
  }
}

async function headAfter(
  session: Session,
  tx: WriteTransaction,
  backup: Backup,
  mode: RestoreOptions['mode'],
): Promise<Head> {
  const { device, author, sequence, hash } = await readHead(tx);
  const holdsOwn = backup.entries.some((e) => e.device === device && e.sequence === sequence && e.hash === hash);
  if (mode === 'replace' && sequence > 0 && !holdsOwn)
    return freshHead(newDeviceId(session.random(DEVICE_RANDOM_BYTES)), author, await lastIdOf(tx));
  return headWhereItEnds(tx, { device, author });
}
