import { createUser, fromPublic, fromSeed } from '@nats-io/nkeys';

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

/** A new user's key, as its seed. */
export const makeSeed = (): string => new TextDecoder().decode(createUser().getSeed());
