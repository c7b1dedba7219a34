import type { Instant } from '../domain/time/instant.ts';
import { canonicalJson } from './canonical-json.ts';
import {
  type DeviceId,
  type Entry,
  type EntryId,
  type Happening,
  type Hash,
  JOURNAL_VERSION,
  type Subject,
} from './entry.ts';
import { hashOfText } from './entry-hash.ts';
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

interface Circumstances {
  readonly at: Instant;
  readonly author: string;
  /** ID_RANDOM_BYTES random bytes. */
  readonly random: Uint8Array;
}

/**
 * The next entry of a device's chain, and the head after it. The entry is plain JSON: it holds no `undefined`, so that
 * what a database gives back and what a file gives back are the same, and hash the same.
 */
export function makeEntry(
  head: WritingHead,
  change: Change,
  { at, author, random }: Circumstances,
): { readonly entry: Entry; readonly head: WritingHead } {
  const id = nextEntryId(at, head.lastId, random);
  const sequence = head.sequence + 1;
  const text = canonicalJson({
    id,
    at,
    author,
    device: head.device,
    version: JOURNAL_VERSION,
    sequence,
    subject: change.subject,
    happening: change.happening,
    previous: head.hash,
  } satisfies Omit<Entry, 'hash'>);
  const hash = hashOfText(text);
  const entry: Entry = { ...JSON.parse(text), hash };
  return { entry, head: { device: head.device, sequence, hash, lastId: id } };
}
