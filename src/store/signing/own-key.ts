import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { ChainHead } from '../../journal/chain-head.ts';
import { type HeadSignature, signedText } from '../../journal/signed-head.ts';
import type { Session } from '../write/session.ts';

/**
 * Signs a head with this browser's key, which is made at the first need and can't be taken out of the browser. Null where the
 * browser has no Ed25519, or does not keep such a key.
 */
export async function signHead(session: Session, head: ChainHead): Promise<HeadSignature | null> {
  const pair = await ownKey(session);
  if (pair === null) return null;
  const [signature, publicKey] = await Promise.all([
    crypto.subtle.sign('Ed25519', pair.privateKey, utf8ToBytes(signedText(head))),
    crypto.subtle.exportKey('raw', pair.publicKey),
  ]);
  return { publicKey: hex(publicKey), signature: hex(signature) };
}

/** The key that others check this browser's signatures with; null as above. */
export async function ownPublicKey(session: Session): Promise<string | null> {
  const pair = await ownKey(session);
  return pair === null ? null : hex(await crypto.subtle.exportKey('raw', pair.publicKey));
}

const hex = (bytes: ArrayBuffer): string => bytesToHex(new Uint8Array(bytes));

async function ownKey(session: Session): Promise<CryptoKeyPair | null> {
  const kept = await session.connection.read(async (tx) => tx.objectStore('meta').get('signing-key'));
  if (isKeyPair(kept)) return kept;
  const made = await makeKey();
  if (made === null) return null;
  try {
    // Another tab may have made one in between; the first stays.
    return await session.connection.write(async (tx) => {
      const first = await tx.objectStore('meta').get('signing-key');
      if (isKeyPair(first)) return first;
      await tx.objectStore('meta').put(made, 'signing-key');
      return made;
    });
  } catch (error) {
    // DataCloneError: this browser can't keep a key, so a signature of today could not be told from another's tomorrow.
    if (error instanceof Error && error.name === 'DataCloneError') return null;
    throw error;
  }
}

async function makeKey(): Promise<CryptoKeyPair | null> {
  try {
    // Always a pair, for this algorithm; the types say so for longer names only.
    return (await crypto.subtle.generateKey('Ed25519', false, ['sign', 'verify'])) as CryptoKeyPair;
  } catch (error) {
    if (error instanceof Error && error.name === 'NotSupportedError') return null;
    throw error;
  }
}

function isKeyPair(value: unknown): value is CryptoKeyPair {
  return typeof value === 'object' && value !== null && 'privateKey' in value && 'publicKey' in value;
}
