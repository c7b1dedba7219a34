import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { canonicalJson } from './canonical-json.ts';
import { type Hash, hashSchema } from './ids.ts';
import { contentOfBatch } from './row-tree.ts';

type Fields = Readonly<Record<string, unknown>>;

/**
 * The hash of an entry. It covers every field but `hash`, fields this version does not know included.
 *
 * - With a `salt` it is taken in two steps: what happened and the salt give the content's hash, and that stands for both
 *   among the other fields. So an entry can be shown without its content, and its hash still be made again by anyone:
 *   that is how an evidence pack holds back what other lots are about.
 * - With `rows` as well, how many rows it brought in, the content's hash is the root of a tree over them: see row-tree.ts.
 * - Without one, as in the earliest entries, it is SHA-256 over the canonical JSON of all fields.
 *
 * Take it of an entry as it is stored, not as a schema returned it: a schema of a later version may fill in fields.
 * Synchronous, because it happens inside a database transaction, which ends at the first wait for anything else.
 */
export function entryHash(entry: Fields): Hash {
  const { salt, happening } = entry;
  if (salt === undefined) return hashOfText(canonicalJson({ ...entry, hash: undefined }));
  return sealedHash(entry, contentHash({ happening, salt, rows: entry.rows }));
}

/** What stands for what happened and the salt where an entry is held back. */
export function contentHash({ happening, salt, rows }: Fields): Hash {
  if (rows !== undefined && typeof salt === 'string' && holdsRows(happening))
    return contentOfBatch({ happening, salt });
  return hashOfText(contentText(canonicalJson(happening), salt));
}

function holdsRows(happening: unknown): happening is Fields & { readonly lots: readonly unknown[] } {
  return typeof happening === 'object' && happening !== null && 'lots' in happening && Array.isArray(happening.lots);
}

/** What the content's hash is taken of: the canonical JSON of `{ happening, salt }`. */
export function contentText(canonicalHappening: string, salt: unknown): string {
  return `{"happening":${canonicalHappening},"salt":${canonicalJson(salt)}}`;
}

/** The hash of a salted entry of which only the content's hash is known. */
export function sealedHash(fields: Fields, content: Hash): Hash {
  return hashOfText(canonicalJson({ ...fields, happening: undefined, salt: undefined, hash: undefined, content }));
}

/** SHA-256 of a text in UTF-8. */
export function hashOfText(text: string): Hash {
  return hashSchema.parse(bytesToHex(sha256(utf8(text))));
}

/** The same by the browser itself, in its own time: it takes its copy of the bytes before it answers. */
export async function hashAside(text: string): Promise<Hash> {
  return hashSchema.parse(bytesToHex(new Uint8Array(await crypto.subtle.digest('SHA-256', utf8(text)))));
}

const ENCODER = new TextEncoder();
const LARGEST_ROOM = 8_000_000;
let room = new Uint8Array(64_000);

/** The text's bytes, good until the next call: fresh memory for each long entry would cost more than its hash. */
function utf8(text: string): Uint8Array<ArrayBuffer> {
  const most = 3 * text.length;
  if (most > LARGEST_ROOM) return ENCODER.encode(text);
  if (most > room.length) room = new Uint8Array(most);
  return room.subarray(0, ENCODER.encodeInto(text, room).written);
}
