import { type SignedHead, signedText } from '../../journal/signed-head.ts';
import { bytesOfHex, hexOf } from '../keys/hex.ts';
import { keyOfSeed, verifies } from '../keys/user-key.ts';

/** The end of a chain signed with the key that the server knows the device by: for browsers that have no Ed25519. */
export const proofOf = (head: SignedHead, seed: string): string => hexOf(keyOfSeed(seed).sign(bytes(head)));

export function isProofOf(head: SignedHead, proof: string | undefined, userKey: string): boolean {
  return proof !== undefined && verifies(userKey, bytes(head), bytesOfHex(proof));
}

const bytes = (head: SignedHead): Uint8Array => new TextEncoder().encode(signedText(head));
