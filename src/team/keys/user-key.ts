import { createUser, fromPublic, fromSeed } from '@nats-io/nkeys';
import { hexOf } from './hex.ts';

/** The pair of keys of a seed (NKey). @throws when it is none */
export const keyOfSeed = (seed: string) => fromSeed(new TextEncoder().encode(seed));

/** Whether a signature (Ed25519) fits a user's key. */
export function verifies(userKey: string, bytes: Uint8Array, signature: Uint8Array): boolean {
  try {
    return fromPublic(userKey).verify(bytes, signature);
  } catch {
    // No key at all.
    return false;
  }
}

/**
 * The bare key (Ed25519) in a user's key, in hexadecimal: base 32 (RFC 4648, section 6) of a byte for the kind, the 32 bytes
 * of the key and two of a checksum, which `verifies` looks at.
 */
export function publicKeyOf(userKey: string): string {
  let bits = '';
  for (const letter of userKey) bits += BASE_32.indexOf(letter).toString(2).padStart(5, '0');
  return hexOf(Uint8Array.from({ length: 32 }, (_, i) => Number.parseInt(bits.slice(8 * i + 8, 8 * i + 16), 2)));
}

const BASE_32 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';

/** A new user's key, as its seed. */
export const makeSeed = (): string => new TextDecoder().decode(createUser().getSeed());
