import type { LotId } from '../../domain/lot/lot.ts';
import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import type { AttachmentKind } from '../../domain/sale/attachment.ts';
import type { Entry } from '../../journal/entry.ts';
import { subjectOfLot } from '../../journal/subject.ts';
import { appendWith } from '../write/append.ts';
import type { Session } from '../write/session.ts';
import { fileHash } from './file-hash.ts';
import { type StorageRoom, sayBytes, tightRoomSentence } from './storage-room.ts';

/** A file that is to be kept with a lot. */
export interface AttachmentToKeep {
  readonly bytes: Blob | Uint8Array<ArrayBuffer>;
  readonly name: string;
  /** That of the blob when left out. */
  readonly mediaType?: string;
  readonly about: AttachmentKind;
  readonly note?: string;
}

/** What came of it. */
export interface AttachmentKept {
  readonly hash: string;
  /** The entry that can be undone; none when this lot had the very same file already. */
  readonly entries: readonly Entry[];
  /** What to tell the user about the room that is left; null while there is plenty. */
  readonly warning: string | null;
}

/** One file may be this large, in bytes: more than any paper or picture, and still held in memory while it is hashed. */
const LARGEST = 100_000_000;

/**
 * Keeps a file: its bytes under their hash, and an entry that names it, in one transaction. On a full disk neither is
 * written, and all that was there stays. The same bytes kept twice take their room once.
 */
export async function keepAttachment(
  session: Session,
  lot: LotId,
  { bytes, name, mediaType, about, note }: AttachmentToKeep,
): Promise<Outcome<AttachmentKept>> {
  const size = bytes instanceof Blob ? bytes.size : bytes.byteLength;
  const refusal = badSize(size) ?? noRoom(size, await session.room());
  if (refusal !== null) return { ok: false, ...refusal };
  const read = await readAll(bytes);
  if (!read.ok) return read;
  const type = mediaType ?? (bytes instanceof Blob ? bytes.type : '');
  const hash = await fileHash(read.value);
  // A blob of its own: a picked file may change or vanish on the disk while it waits to be written.
  const blob = new Blob([read.value], { type });
  const attachment = {
    hash,
    name: name.trim().slice(0, 200) || 'unnamed',
    mediaType: type.slice(0, 200),
    sizeBytes: size,
    about,
    ...(note && { note }),
  };
  const written = await appendWith(session, async (tx) => {
    const present = await tx.objectStore('lots').get(lot);
    const twice = present?.attachments?.some((kept) => kept.hash === hash && kept.about === about) ?? false;
    // Written even when the hash is there: what is there may have been damaged, and this is surely whole.
    await tx.objectStore('files').put({ hash, blob });
    return twice ? [] : [{ subject: subjectOfLot(lot), happening: { kind: 'attachment-kept', attachment } }];
  });
  if (!written.ok) return written;
  return ok({ hash, entries: written.value, warning: tightRoomSentence(await session.room()) });
}

function badSize(size: number): Refusal | null {
  if (size === 0) return { reason: 'empty-file', message: 'This file is empty, so there is nothing to save.' };
  if (size <= LARGEST) return null;
  const message = `This file is ${sayBytes(size)}. One file can be at most ${sayBytes(LARGEST)}: save it smaller, or in parts.`;
  return { reason: 'file-too-large', message };
}

function noRoom(size: number, room: StorageRoom | null): Refusal | null {
  const left = room === null ? Infinity : room.quotaBytes - room.usedBytes;
  if (size < left) return null;
  const message = `This file is ${sayBytes(size)}, and only ${sayBytes(Math.max(0, left))} is left. Nothing was saved. Free some space on this disk, then save it again.`;
  return { reason: 'disk-full', message };
}

async function readAll(bytes: Blob | Uint8Array<ArrayBuffer>): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
  if (!(bytes instanceof Blob)) return ok(bytes);
  try {
    return ok(new Uint8Array(await bytes.arrayBuffer()));
  } catch {
    // NotReadableError, NotFoundError: the file behind it was moved or changed after it was picked.
    return refuse('not-readable', 'This file can no longer be read. Was it moved or changed? Choose it again.');
  }
}
