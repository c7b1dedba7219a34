import type { Envelope } from '../../journal/read-entry.ts';
import { bytesOf } from './piece.ts';

/** Bytes of a message before it is sealed: sealed, they are a third more, and a server takes 1 MB as it is delivered. */
export const FULL = 500_000;
/** Entries in a message, so that taking one in is never long. */
const MOST = 200;

/** Entries in their order, a message each: as many together as fit. One that is larger than all goes alone, in pieces. */
export function batchesOf(entries: readonly Envelope[], full = FULL, most = MOST): readonly (readonly Envelope[])[] {
  const batches: Envelope[][] = [];
  let size = Number.POSITIVE_INFINITY;
  for (const entry of entries) {
    const length = bytesOf(JSON.stringify(entry));
    const last = batches.at(-1);
    if (last !== undefined && size + length <= full && last.length < most) {
      last.push(entry);
      size += length;
    } else {
      batches.push([entry]);
      size = length;
    }
  }
  return batches;
}
