import { bytesToHex } from '@noble/hashes/utils.js';

/** SHA-256 of a file's bytes, in lower-case hexadecimal, by the browser's own arithmetic: quick even for tens of MB. */
export async function fileHash(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  return bytesToHex(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)));
}
