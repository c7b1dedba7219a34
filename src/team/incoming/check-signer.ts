import type { Refusal } from '../../domain/outcome.ts';
import { checkSignature } from '../../journal/signed-head.ts';
import type { EntriesMessage } from '../message/entries-message.ts';
import { isProofOf } from '../message/proof.ts';
import type { Member } from './membership.ts';

/**
 * Whoever is in the team holds its key and could seal anything; only the device itself can sign the end of its chain.
 * Null when the signature is the device's. Where its browser has no such signatures, the key that the server knows it by signs.
 */
export async function checkSigner(
  { head, entries, proof }: EntriesMessage,
  { publicKey, userKey }: Member,
): Promise<Refusal | null> {
  if (!isEndOf(head, entries.at(-1))) return no('other-end', 'it signs another entry than its last one');
  if (publicKey === null)
    return isProofOf(head, proof, userKey) ? null : no('unsigned', 'it is not signed with the key of this device');
  if (head.signed === undefined) return no('unsigned', 'it is not signed, though this device signs');
  if (head.signed.publicKey !== publicKey) return no('other-signer', 'it is signed with the key of another device');
  return (await checkSignature(head, head.signed)) === 'bad' ? no('bad-signature', 'its signature does not fit') : null;
}

function isEndOf({ sequence, hash }: EntriesMessage['head'], entry: unknown): boolean {
  const last = entry as { readonly sequence?: unknown; readonly hash?: unknown } | undefined;
  return last?.sequence === sequence && last.hash === hash;
}

const no = (reason: string, message: string): Refusal => ({ reason, message });
