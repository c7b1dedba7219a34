import { hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';
import * as z from 'zod/mini';
import { type ChainHead, chainHeadSchema, writeHead } from './chain-head.ts';
import { deviceIdSchema } from './ids.ts';

/** An Ed25519 public key (RFC 8032), 32 bytes in lower-case hexadecimal. */
export const publicKeySchema = z.string().check(z.regex(/^[0-9a-f]{64}$/));
const signatureSchema = z.string().check(z.regex(/^[0-9a-f]{128}$/));

/** A browser's signature of the last entry of its own chain, with the key that belongs to it. */
export const headSignatureSchema = z.strictObject({ publicKey: publicKeySchema, signature: signatureSchema });
export type HeadSignature = z.infer<typeof headSignatureSchema>;

/** The last entry of a device, signed by it where its browser can sign. */
export const signedHeadSchema = z.strictObject({
  ...chainHeadSchema.shape,
  signed: z.optional(headSignatureSchema),
});
export type SignedHead = z.infer<typeof signedHeadSchema>;

/** Which key a device signs with, as somebody noted it or saw it before. */
export const deviceKeySchema = z.strictObject({ device: deviceIdSchema, publicKey: publicKeySchema });
export type DeviceKey = z.infer<typeof deviceKeySchema>;

/** A key as it is noted down, beside the fingerprints. */
export const writeKey = ({ device, publicKey }: DeviceKey): string => `${device}:key:${publicKey}`;

/** What is signed: words of its own first, so that a signature of anything else never passes for one of a head. */
export const signedText = (head: ChainHead): string => `Headroom head ${writeHead(head)}`;

/**
 * - `good`, `bad`: the signature fits the head and the key, or does not;
 * - `unknown`: this browser has no Ed25519, so nobody can say.
 */
export type SignatureFound = 'good' | 'bad' | 'unknown';

/** Checks one signature by the browser's own arithmetic. A key of small order, for which a signature fits anything, is bad. */
export function checkSignature(head: ChainHead, signature: HeadSignature): Promise<SignatureFound> {
  return checkSignatureOf(signedText(head), signature);
}

/** The same of any text. */
export async function checkSignatureOf(text: string, { publicKey, signature }: HeadSignature): Promise<SignatureFound> {
  if (SMALL_ORDER.has(publicKey)) return 'bad';
  let key: CryptoKey;
  try {
    key = await crypto.subtle.importKey('raw', hexToBytes(publicKey), 'Ed25519', false, ['verify']);
  } catch (error) {
    return error instanceof Error && error.name === 'NotSupportedError' ? 'unknown' : 'bad';
  }
  const fits = await crypto.subtle.verify('Ed25519', key, hexToBytes(signature), utf8ToBytes(text));
  return fits ? 'good' : 'bad';
}

/** The points of small order in every spelling (RFC 8032, section 5.1.3; listed in RFC 7748 for the same curve's other form). */
const SMALL_ORDER: ReadonlySet<string> = new Set(
  [
    `01${'00'.repeat(31)}`,
    '00'.repeat(32),
    `ec${'ff'.repeat(30)}7f`,
    '26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc05',
    'c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a',
    `ed${'ff'.repeat(30)}7f`,
    `ee${'ff'.repeat(30)}7f`,
  ].flatMap((point) => [point, withSign(point)]),
);

/** The same with the bit of the sign set. */
function withSign(point: string): string {
  return point.slice(0, 62) + (Number.parseInt(point.slice(62), 16) | 0x80).toString(16).padStart(2, '0');
}
