import { bytesToHex } from '@noble/hashes/utils.js';
import type { Instant } from '../domain/time/instant.ts';
import { canonicalForm, canonicalJson } from './canonical-json.ts';
import { type Entry, JOURNAL_VERSION, type Subject } from './entry.ts';
import { contentText, entryHash, hashAside, hashOfText, sealedHash } from './entry-hash.ts';
import type { Happening } from './happening.ts';
import type { DeviceId, EntryId, Hash } from './ids.ts';
import { contentOfBatch, contentOfBatchAside } from './row-tree.ts';
import { nextEntryId } from './sortable-id.ts';

/** Where a device continues its chain. */
export interface WritingHead {
  readonly device: DeviceId;
  /** Of the device's last entry; 0 when it has none. */
  readonly sequence: number;
  /** Of the device's last entry; '' when it has none. */
  readonly hash: Hash | '';
  /** The greatest entry id in the journal, of whichever device. */
  readonly lastId: EntryId | null;
}

/** What is to be written down, and about what. */
export interface Change {
  readonly subject: Subject;
  readonly happening: Happening;
}

/** A change whose happening is plain JSON and sealed already: most of the work of an entry that holds many lots. */
export interface SealedChange extends Change {
  /** In hexadecimal. */
  readonly salt: string;
  /** How many rows it brings in, where it is more than one. */
  readonly rows?: number;
  /** The content's hash, see entryHash. */
  readonly content: Hash;
}

/**
 * What can be done before it is a change's turn in the chain.
 * @param salt SALT_BYTES random bytes
 */
export function sealedChange(change: Change, salt: Uint8Array): SealedChange {
  const { sealed, text, batch, write } = toBeSealed(change, salt);
  if (batch === null) return { ...sealed, content: hashOfText(contentText(text, sealed.salt)) };
  return { ...sealed, rows: batch.happening.lots.length, content: contentOfBatch(batch, write) };
}

/** The same for what is long: by the browser's own hash, many times quicker, for which no transaction can wait. */
export async function sealedAside(change: Change, salt: Uint8Array): Promise<SealedChange> {
  const { sealed, text, batch, write } = toBeSealed(change, salt);
  if (batch === null) return { ...sealed, content: await hashAside(contentText(text, sealed.salt)) };
  return { ...sealed, rows: batch.happening.lots.length, content: await contentOfBatchAside(batch, write) };
}

function toBeSealed({ subject, happening }: Change, bytes: Uint8Array) {
  const { text, plain, ordered } = canonicalForm(happening);
  const salt = bytesToHex(bytes);
  // As plain JSON it is the happening still, and no member of it is `undefined`.
  const sealed = { subject, happening: plain as Happening, salt };
  const isBatch = happening.kind === 'lots-added' && happening.lots.length > 1;
  const batch = isBatch ? { happening: plain as typeof happening, salt } : null;
  return { sealed, text, batch, write: ordered ? JSON.stringify : canonicalJson };
}

interface Circumstances {
  readonly at: Instant;
  readonly author: string;
  /** ID_RANDOM_BYTES random bytes. */
  readonly random: Uint8Array;
  /** SALT_BYTES random bytes; without them what happened can't be held back from an evidence pack. */
  readonly salt?: Uint8Array;
}

/** How many random bytes the salt of an entry takes. */
export const SALT_BYTES = 16;

/**
 * The next entry of a device's chain, and the head after it. The entry is plain JSON: it holds no `undefined`, so that
 * what a database gives back and what a file gives back are the same, and hash the same.
 */
export function makeEntry(
  head: WritingHead,
  change: Change | SealedChange,
  { at, author, random, salt }: Circumstances,
): { readonly entry: Entry; readonly head: WritingHead } {
  const id = nextEntryId(at, head.lastId, random);
  const sequence = head.sequence + 1;
  const fields = {
    id,
    at,
    author,
    device: head.device,
    version: JOURNAL_VERSION,
    sequence,
    subject: change.subject,
    previous: head.hash,
  } satisfies Omit<Entry, 'hash' | 'salt' | 'happening'>;
  const entry = withHash(fields, 'content' in change || salt === undefined ? change : sealedChange(change, salt));
  return { entry, head: { device: head.device, sequence, hash: entry.hash, lastId: id } };
}

function withHash(fields: Omit<Entry, 'hash' | 'salt' | 'happening'>, change: Change | SealedChange): Entry {
  if ('content' in change) {
    const { happening, salt, rows, content } = change;
    const counted = rows === undefined ? fields : { ...fields, rows };
    return { ...counted, happening, salt, hash: sealedHash(counted, content) };
  }
  const happening = canonicalForm(change.happening).plain as Happening;
  return { ...fields, happening, hash: entryHash({ ...fields, happening }) };
}
