import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, concatBytes, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson } from './canonical-json.ts';
import { type Hash, hashSchema } from './ids.ts';

/** One row of a batch with what proves it: see contentOfBatch. */
export interface ShownRow {
  /** 1 for the first row. */
  readonly index: number;
  readonly lot: unknown;
  /** The row's own salt, in hexadecimal. */
  readonly salt: string;
  /** The hashes beside the way from the row up to the root, the lowest first. */
  readonly path: readonly string[];
}

/** A happening that brought many rows in, with what else it says. */
interface Batch {
  readonly happening: Readonly<Record<string, unknown>> & { readonly lots: readonly unknown[] };
  readonly salt: string;
}

/** Writes a value as canonical JSON; quicker than canonicalJson where its members are known to be in order. */
type Writer = (value: unknown) => string;

/**
 * The content's hash of an entry that brought several rows in: the root of a hash tree (RFC 6962, section 2.1), so that one
 * row can be shown with its path and the others held back. Its leaves are canonical JSON: first what the entry says beside
 * the rows, `{"happening":…,"salt":…}`, then each row, `{"lot":…,"salt":…}`. Each leaf has a salt of its own, made from the
 * entry's, which is never shown: else a row could be found out by trying.
 */
export function contentOfBatch(batch: Batch, write: Writer = canonicalJson): Hash {
  return hashSchema.parse(bytesToHex(treeHash(leavesOf(batch, write).map(leafHash))));
}

/** The same, its leaves hashed by the browser itself, which is many times quicker. */
export async function contentOfBatchAside(batch: Batch, write: Writer = canonicalJson): Promise<Hash> {
  const hashes = leavesOf(batch, write).map((leaf) => crypto.subtle.digest('SHA-256', leafBytes(leaf)));
  return hashSchema.parse(bytesToHex(treeHash((await Promise.all(hashes)).map((hash) => new Uint8Array(hash)))));
}

/** @param index 1 for the first row; the caller has seen that it is there */
export function shownRow(batch: Batch, index: number): ShownRow {
  const path = auditPath(leavesOf(batch, canonicalJson).map(leafHash), index).map(bytesToHex);
  return { index, lot: batch.happening.lots[index - 1], salt: saltOfLeaf(batch.salt, index), path };
}

/**
 * The content's hash again from one row and its path, or null when the path can't be one of a batch of so many rows
 * (RFC 9162, section 2.1.3.2).
 */
export function contentFromRow({ index, lot, salt, path }: ShownRow, rows: number): Hash | null {
  if (index < 1 || index > rows) return null;
  let [node, last] = [index, rows];
  let hash = leafHash(rowLeaf(canonicalJson(lot), salt));
  for (const beside of path) {
    if (last === 0) return null;
    const other = hexToBytes(beside);
    if (node % 2 === 1 || node === last) {
      hash = nodeHash(other, hash);
      while (node % 2 === 0 && node > 0) [node, last] = [node >> 1, last >> 1];
    } else hash = nodeHash(hash, other);
    [node, last] = [node >> 1, last >> 1];
  }
  return last === 0 ? hashSchema.parse(bytesToHex(hash)) : null;
}

function leavesOf({ happening, salt }: Batch, write: Writer): string[] {
  const { lots, ...rest } = happening;
  return [
    `{"happening":${write(rest)},"salt":"${saltOfLeaf(salt, 0)}"}`,
    ...lots.map((lot, i) => rowLeaf(write(lot), saltOfLeaf(salt, i + 1))),
  ];
}

const rowLeaf = (canonicalLot: string, salt: string): string => `{"lot":${canonicalLot},"salt":"${salt}"}`;

/** The first 16 bytes of SHA-256 over the entry's salt and the leaf's number: shown, it gives away neither salt nor another leaf. */
function saltOfLeaf(salt: string, leaf: number): string {
  const number = new Uint8Array(4);
  new DataView(number.buffer).setUint32(0, leaf);
  return bytesToHex(sha256(concatBytes(hexToBytes(salt), number)).subarray(0, 16));
}

// A byte before each tells leaves from nodes, so that a node can't be given out as a row.
const leafBytes = (text: string): Uint8Array<ArrayBuffer> => concatBytes(Uint8Array.of(0), utf8ToBytes(text));
const leafHash = (text: string): Uint8Array => sha256(leafBytes(text));
const nodeHash = (left: Uint8Array, right: Uint8Array): Uint8Array =>
  sha256(concatBytes(Uint8Array.of(1), left, right));

/** The root over hashes of leaves, of which there is at least one. */
export function treeHash(leaves: readonly Uint8Array[]): Uint8Array {
  const [only] = leaves;
  if (only === undefined || leaves.length === 1) return only ?? sha256(new Uint8Array());
  const half = splitOf(leaves.length);
  return nodeHash(treeHash(leaves.slice(0, half)), treeHash(leaves.slice(half)));
}

function auditPath(leaves: readonly Uint8Array[], at: number): Uint8Array[] {
  if (leaves.length <= 1) return [];
  const half = splitOf(leaves.length);
  return at < half
    ? [...auditPath(leaves.slice(0, half), at), treeHash(leaves.slice(half))]
    : [...auditPath(leaves.slice(half), at - half), treeHash(leaves.slice(0, half))];
}

/** The largest power of two below a count of two or more. */
const splitOf = (count: number): number => 2 ** (31 - Math.clz32(count - 1));
