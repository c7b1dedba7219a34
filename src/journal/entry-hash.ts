import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson } from './canonical-json.ts';
import { type Hash, hashSchema } from './entry.ts';

/**
 * SHA-256 over the canonical JSON of every field of an entry but `hash`, fields this version does not know included.
 *
 * Take it of an entry as it is stored, not as a schema returned it: a schema of a later version may fill in fields.
 * Synchronous, because it happens inside a database transaction, which ends at the first wait for anything else.
 */
export function entryHash(entry: Readonly<Record<string, unknown>>): Hash {
  return hashOfText(canonicalJson({ ...entry, hash: undefined }));
}

/** SHA-256 of a text in UTF-8. */
export function hashOfText(text: string): Hash {
  return hashSchema.parse(bytesToHex(sha256(utf8ToBytes(text))));
}
