import type { Slices } from '../journal/slices.ts';

/** In bytes: a few milliseconds of hashing. A line with a part of a picture is a million, and takes a tenth of a second. */
const AT_ONCE = 2 ** 16;

/**
 * Hashes bytes, as many as they may be, so that the page draws and answers in between.
 * @throws Refused when the slices were stopped
 */
export async function hashInSlices(
  hash: { readonly update: (bytes: Uint8Array) => unknown },
  bytes: Uint8Array,
  slices: Slices,
): Promise<void> {
  for (let at = 0; at < bytes.length; at += AT_ONCE) {
    hash.update(bytes.subarray(at, at + AT_ONCE));
    if (slices.took(0)) await slices.turn();
  }
}
