import { CompactEncrypt, compactDecrypt, errors } from 'jose';
import * as z from 'zod/mini';

const WAY = { alg: 'ECDH-ES+A256KW', enc: 'A256GCM' } as const;
const CURVE = { name: 'ECDH', namedCurve: 'P-256' } as const;

/** A coordinate of a point on P-256, 32 bytes in base64url (RFC 7518, section 6.2.1). */
const coordinate = z.string().check(z.regex(/^[A-Za-z0-9_-]{43}$/));

/** The public half of a device's key. */
export const boxKeySchema = z.strictObject({ x: coordinate, y: coordinate });
type BoxKey = z.infer<typeof boxKeySchema>;

/** A pair of keys of a device; the private half can't be taken out of the browser. */
export function makeBoxKeys(): Promise<CryptoKeyPair> {
  return crypto.subtle.generateKey(CURVE, false, ['deriveBits']);
}

export async function publicBoxKey({ publicKey }: CryptoKeyPair): Promise<BoxKey> {
  const { x, y } = await crypto.subtle.exportKey('jwk', publicKey);
  if (x === undefined || y === undefined) throw new Error('a key of this curve has two coordinates');
  return { x, y };
}

/** Seals a text for one device: a JWE (RFC 7516) by ECDH-ES with AES key wrap (RFC 7518, section 4.6). */
export async function sealFor({ x, y }: BoxKey, text: string): Promise<string> {
  const key = await crypto.subtle.importKey('jwk', { kty: 'EC', crv: 'P-256', x, y }, CURVE, true, []);
  return new CompactEncrypt(new TextEncoder().encode(text)).setProtectedHeader(WAY).encrypt(key);
}

/** Opens what was sealed for this device; null when it was not, or was altered. */
export async function openFor({ privateKey }: CryptoKeyPair, sealed: string): Promise<string | null> {
  try {
    const { plaintext } = await compactDecrypt(sealed, privateKey, {
      keyManagementAlgorithms: [WAY.alg],
      contentEncryptionAlgorithms: [WAY.enc],
    });
    return new TextDecoder('utf-8', { fatal: true }).decode(plaintext);
  } catch (error) {
    if (error instanceof errors.JOSEError || error instanceof TypeError || error instanceof DOMException) return null;
    throw error;
  }
}
