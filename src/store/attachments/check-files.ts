import { filesNamedIn } from '../../folds/files-named-in.ts';
import { readEntry } from '../../journal/read-entry.ts';
import { eachEntry } from '../journal/each-entry.ts';
import type { Session } from '../write/session.ts';
import { fileHash } from './file-hash.ts';

/** What a look at every attached file found. */
export interface FilesCheck {
  readonly files: number;
  /** A sentence for each that is damaged, or that an entry names and that is not here. */
  readonly faults: readonly string[];
}

/** Reads every attached file and holds it against its hash, and every entry that names a file against what is here. */
export async function checkFiles(session: Session): Promise<FilesCheck> {
  const names = new Map<string, string>();
  const stored = await session.connection.read(async (tx) => {
    await eachEntry(tx, (raw) => {
      const read = readEntry(raw);
      if (read.as !== 'known') return;
      for (const { hash, name } of filesNamedIn(read.entry))
        names.set(hash, name ?? names.get(hash) ?? 'The picture of a bid');
    });
    return tx.objectStore('files').getAll();
  });
  const here = new Set(stored.map(({ hash }) => hash));
  const faults: string[] = [];
  for (const { hash, blob } of stored)
    if (!(await isWhole(blob, hash)))
      faults.push(`${names.get(hash) ?? hash} is damaged: its contents have changed since it was saved.`);
  for (const [hash, name] of names)
    if (!here.has(hash)) faults.push(`${name} is missing: the journal lists it, but its contents are not here.`);
  return { files: stored.length, faults };
}

async function isWhole(blob: Blob, hash: string): Promise<boolean> {
  try {
    return (await fileHash(new Uint8Array(await blob.arrayBuffer()))) === hash;
  } catch {
    // NotReadableError: the file under it is gone from the browser's profile.
    return false;
  }
}
