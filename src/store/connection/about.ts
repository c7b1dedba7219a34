import type { Outcome } from '../../domain/outcome.ts';
import { type ChainHead, chainHeadSchema } from '../../journal/chain-head.ts';
import { authorSchema, type DeviceId } from '../../journal/ids.ts';
import type { BackupHeader } from '../backup/backup-format.ts';
import { readHead, writeHead } from '../write/head.ts';
import { Refused } from '../write/refused.ts';
import type { Session } from '../write/session.ts';
import { tryWrite } from '../write/try-write.ts';
import { type LastBackup, lastBackupSchema, type ReadTransaction, viewsSchema } from './schema.ts';

/** What this browser's store is, in numbers. */
export interface About {
  readonly device: DeviceId;
  readonly author: string;
  readonly entries: number;
  readonly lots: number;
  /** Entries kept for a newer Headroom; they change nothing here until this one is updated. */
  readonly unknown: number;
  /** Entries that are damaged. */
  readonly unreadable: number;
  /** The last entry of each device, to be noted down somewhere else. */
  readonly heads: readonly ChainHead[];
  /** The last backup that was saved from this browser; null when none was. */
  readonly lastBackup: LastBackup | null;
}

export function about(session: Session): Promise<About> {
  return session.connection.read(async (tx) => {
    const { device, author } = await readHead(tx);
    const views = viewsSchema.parse(await tx.objectStore('meta').get('views'));
    const lastBackup = lastBackupSchema.safeParse(await tx.objectStore('meta').get('last-backup'));
    return {
      device,
      author,
      entries: await tx.objectStore('entries').count(),
      lots: await tx.objectStore('lots').count(),
      unknown: views.unknown,
      unreadable: views.unreadable,
      heads: await headsOf(tx),
      lastBackup: lastBackup.success ? lastBackup.data : null,
    };
  });
}

/** The last entry of each device: one look at the index for each, however long the chains are. */
export async function headsOf(tx: ReadTransaction): Promise<ChainHead[]> {
  const heads: ChainHead[] = [];
  let cursor = await tx.objectStore('entries').index('sequence').openCursor(null, 'prev');
  while (cursor !== null) {
    const { device, sequence, hash } = cursor.value;
    heads.push(chainHeadSchema.parse({ device, sequence, hash }));
    // Before number 1 of this device comes the last of the device before it.
    cursor = await cursor.continue([device, 0]);
  }
  return heads.reverse();
}

/** Remembers the backup that the user just saved, so that its age can be shown. */
export function noteBackup(session: Session, { exportedAt, counts }: BackupHeader): Promise<Outcome<null>> {
  return tryWrite(session, async (tx) => {
    await tx.objectStore('meta').put({ at: exportedAt, entries: counts.entries }, 'last-backup');
    return null;
  });
}

/** In whose name this browser writes, and whether anybody has said so. */
export interface Author {
  readonly name: string;
  readonly given: boolean;
}

export function readAuthor(session: Session): Promise<Author> {
  return session.connection.read(async (tx) => {
    const { author: name } = await readHead(tx);
    return { name, given: (await tx.objectStore('meta').getKey('author-given')) !== undefined };
  });
}

/** Says in whose name this browser writes; from then on it counts as given. */
export function setAuthor(session: Session, name: string): Promise<Outcome<null>> {
  return tryWrite(session, async (tx) => {
    const author = authorSchema.safeParse(name.trim());
    if (!author.success) throw new Refused('bad-author', 'Give a name of 1 to 80 characters.');
    writeHead(tx, { ...(await readHead(tx)), author: author.data });
    await tx.objectStore('meta').put(true, 'author-given');
    return null;
  });
}
