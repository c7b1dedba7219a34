import type { LotId } from '../../domain/lot/lot.ts';
import type { KeptAttachment } from '../../journal/states/kept-attachment.ts';
import type { Session } from '../write/session.ts';

/** The files that are kept with a lot, in the order in which they came. */
export function attachmentsOf(session: Session, lot: LotId): Promise<readonly KeptAttachment[]> {
  return session.connection.read(async (tx) => (await tx.objectStore('lots').get(lot))?.attachments ?? []);
}

/** The bytes under a hash, or null when they are not here. */
export function readAttachment(session: Session, hash: string): Promise<Blob | null> {
  return session.connection.read(async (tx) => (await tx.objectStore('files').get(hash))?.blob ?? null);
}
