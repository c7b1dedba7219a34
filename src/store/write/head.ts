import { unwrap } from 'idb';
import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import { type Head, headSchema, type ReadTransaction, type WriteTransaction } from '../connection/schema.ts';

/**
 * This browser's place in the journal. It was written when the store was opened, so that it is always there.
 * @throws Error when it is missing or damaged: without it nothing can be written, and nothing must be made up.
 */
export async function readHead(tx: ReadTransaction): Promise<Head> {
  return headSchema.parse(await tx.objectStore('meta').get('head'));
}

/** Waits for nothing: should it fail, the whole transaction does. */
export function writeHead(tx: WriteTransaction, head: Head): void {
  unwrap(tx.objectStore('meta')).put(head, 'head');
}

/** The head of a browser that has written nothing yet, beside whatever the journal already holds of others. */
export function freshHead(device: DeviceId, author: string, lastId: Head['lastId']): Head {
  return { device, author, sequence: 0, hash: '', lastId };
}

/** The greatest entry id there is, or null. */
export async function lastIdOf(tx: ReadTransaction): Promise<Head['lastId']> {
  const cursor = await tx.objectStore('entries').openCursor(null, 'prev');
  return cursor?.value.id ?? null;
}

/** The head of a device after entries came in from elsewhere: its own may be among them. */
export async function headWhereItEnds(
  tx: ReadTransaction,
  { device, author }: Pick<Head, 'device' | 'author'>,
): Promise<Head> {
  const lastId = await lastIdOf(tx);
  const own = await lastOf(tx, device);
  return own === null
    ? freshHead(device, author, lastId)
    : { device, author, sequence: own.sequence, hash: own.hash, lastId };
}

/** The last entry of a device that is here, or null. */
export async function lastOf(tx: ReadTransaction, device: DeviceId): Promise<Envelope | null> {
  const ofDevice = IDBKeyRange.bound([device, 0], [device, Infinity]);
  const cursor = await tx.objectStore('entries').index('sequence').openCursor(ofDevice, 'prev');
  return cursor?.value ?? null;
}
