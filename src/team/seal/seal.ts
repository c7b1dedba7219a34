import { base64url, CompactEncrypt, compactDecrypt, decodeProtectedHeader, errors } from 'jose';
import * as z from 'zod/mini';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';

/** AES in Galois/Counter mode with a key of 256 bits (RFC 7518, section 5.3), by the browser's own arithmetic. */
const CIPHER = 'A256GCM';

/** A key that a team seals with. There is a new one whenever a device was put out. */
export interface TeamKey {
  /** 1 for the team's first key, then one more each. */
  readonly number: number;
  readonly key: CryptoKey;
  /** Made of the same bytes, for the names of files on the server (HMAC). */
  readonly naming: CryptoKey;
}
type SealingKey = Pick<TeamKey, 'number' | 'key'>;

/** A key as it is sealed for another device: its number, and its 32 bytes in base64url. */
export const teamKeySchema = z.strictObject({
  number: z.int().check(z.gte(1)),
  bytes: z.string().check(z.regex(/^[A-Za-z0-9_-]{43}$/)),
});
type WrittenKey = z.infer<typeof teamKeySchema>;

export type SealReason = 'no-key' | 'not-sealed' | 'altered';

/** A text that was sealed, and the number of the key that it was sealed with. */
export interface Unsealed {
  readonly text: string;
  readonly key: number;
}

/**
 * A new key. It can be wrapped for another device of the team, so the browser would hand it out to this program; no page
 * ever holds it.
 */
export function makeTeamKey(number: number): Promise<TeamKey> {
  return importTeamKey({ number, bytes: base64url.encode(crypto.getRandomValues(new Uint8Array(32))) }, true);
}

/** @throws when the browser does not hand the key out: only an owner's does */
export async function writeTeamKey({ number, key }: TeamKey): Promise<WrittenKey> {
  return { number, bytes: base64url.encode(new Uint8Array(await crypto.subtle.exportKey('raw', key))) };
}

/** An owner's browser would hand it out again, so that it can be sealed for who joins; no other does. */
export async function importTeamKey({ number, bytes }: WrittenKey, forOwner: boolean): Promise<TeamKey> {
  const raw = new Uint8Array(base64url.decode(bytes));
  const [key, source] = await Promise.all([
    crypto.subtle.importKey('raw', raw, 'AES-GCM', forOwner, ['encrypt', 'decrypt']),
    crypto.subtle.importKey('raw', raw, 'HKDF', false, ['deriveKey']),
  ]);
  // RFC 5869: another key for another purpose, of which nothing leads back to the first.
  const info = new TextEncoder().encode('Headroom names of files');
  const way = { name: 'HKDF', hash: 'SHA-256', salt: new Uint8Array(), info };
  const naming = await crypto.subtle.deriveKey(way, source, { name: 'HMAC', hash: 'SHA-256' }, false, ['sign']);
  return { number, key, naming };
}

/**
 * Seals a text as a JWE in its compact form (RFC 7516, section 7.1) with direct encryption (RFC 7518, section 4.5). The
 * random number of 96 bits that each takes allows 2^32 messages a key (NIST SP 800-38D, section 8.3).
 */
export function seal(text: string, key: SealingKey): Promise<string> {
  return sealBytes(new TextEncoder().encode(text), key);
}

/** As `seal`, for bytes. */
export function sealBytes(bytes: Uint8Array, { number, key }: SealingKey): Promise<string> {
  return new CompactEncrypt(bytes).setProtectedHeader({ alg: 'dir', enc: CIPHER, kid: String(number) }).encrypt(key);
}

type OpenedBytes = Outcome<
  { readonly bytes: Uint8Array; readonly key: number },
  { readonly reason: SealReason; readonly message: string }
>;

/** Opens what `seal` made. What is sealed in any other way is refused, whatever its header asks for. */
export async function unseal(
  sealed: string,
  keyOf: (number: number) => CryptoKey | undefined,
): Promise<Outcome<Unsealed, { readonly reason: SealReason; readonly message: string }>> {
  const opened = await unsealBytes(sealed, keyOf);
  if (!opened.ok) return opened;
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(opened.value.bytes);
    return ok({ text, key: opened.value.key });
  } catch {
    return refuse('not-sealed', 'it is not sealed as Headroom seals');
  }
}

/** As `unseal`, for bytes. */
export async function unsealBytes(
  sealed: string,
  keyOf: (number: number) => CryptoKey | undefined,
): Promise<OpenedBytes> {
  const number = keyNumber(sealed);
  if (number === null) return refuse('not-sealed', 'it is not sealed as Headroom seals');
  const key = keyOf(number);
  if (key === undefined) return refuse('no-key', `it is sealed with key ${number}, which is not on this computer`);
  try {
    const { plaintext } = await compactDecrypt(sealed, key, {
      keyManagementAlgorithms: ['dir'],
      contentEncryptionAlgorithms: [CIPHER],
    });
    return ok({ bytes: plaintext, key: number });
  } catch (error) {
    if (error instanceof errors.JWEDecryptionFailed)
      return refuse('altered', 'it was altered on its way, or sealed with a key of another team');
    if (error instanceof errors.JOSEError || error instanceof TypeError)
      return refuse('not-sealed', 'it is not sealed as Headroom seals');
    throw error;
  }
}

function keyNumber(sealed: string): number | null {
  try {
    const { kid } = decodeProtectedHeader(sealed);
    return kid !== undefined && /^[1-9]\d{0,8}$/.test(kid) ? Number(kid) : null;
  } catch {
    // TypeError: nothing that has a header.
    return null;
  }
}
