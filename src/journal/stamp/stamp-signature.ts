import { bytesToHex, concatBytes } from '@noble/hashes/utils.js';
import type { SignerInfo } from '@peculiar/asn1-cms';
import { AsnConvert, OctetString } from '@peculiar/asn1-schema';
import type { Certificate } from '@peculiar/asn1-x509';

/** The kind of what is signed, and the DER of the identifier of a time stamp's content (RFC 3161, section 2.4.2). */
const CONTENT_TYPE = '1.2.840.113549.1.9.3';
const TIME_STAMP = '060b2a864886f70d0109100104';
const MESSAGE_DIGEST = '1.2.840.113549.1.9.4';
/** Which certificate is meant: by SHA-1 (RFC 2634), and by a hash of choice (RFC 5035). */
const SIGNING_CERTIFICATE = new Map([
  ['1.2.840.113549.1.9.16.2.12', 'SHA-1'],
  ['1.2.840.113549.1.9.16.2.47', 'SHA-256'],
]);

type Digest = 'SHA-256' | 'SHA-384' | 'SHA-512';

/** What is wrong with the attributes that are signed in place of the content; null when nothing is. */
export async function attributesFault(
  { signedAttrs = [] }: SignerInfo,
  { content, digest, certificate }: { content: ArrayBuffer; digest: Digest; certificate: Certificate },
): Promise<string | null> {
  const valueIn = (type: string): ArrayBuffer | undefined => {
    const found = signedAttrs.filter(({ attrType }) => attrType === type);
    return found.length === 1 && found[0]?.attrValues.length === 1 ? found[0].attrValues[0] : undefined;
  };
  const type = valueIn(CONTENT_TYPE);
  if (type === undefined || hexOf(type) !== TIME_STAMP) return 'it is signed as something else than a time stamp';
  const stated = valueIn(MESSAGE_DIGEST);
  if (
    stated === undefined ||
    hexOf(AsnConvert.parse(stated, OctetString).buffer) !== hexOf(await crypto.subtle.digest(digest, content))
  )
    return 'what it says was changed after it was signed';
  for (const [attribute, hash] of SIGNING_CERTIFICATE) {
    const named = valueIn(attribute);
    if (named !== undefined)
      return hexOf(named).includes(hexOf(await crypto.subtle.digest(hash, AsnConvert.serialize(certificate))))
        ? null
        : 'it is signed for another certificate';
  }
  return 'it does not say which certificate it is signed with';
}

/** Whether the signature fits; null where the way of signing is not known here. */
export async function verifySigner(
  { signedAttrs = [], signature, signatureAlgorithm }: SignerInfo,
  { tbsCertificate: { subjectPublicKeyInfo } }: Certificate,
  digest: Digest,
): Promise<boolean | null> {
  const data = setOf(signedAttrs.map((attribute) => new Uint8Array(AsnConvert.serialize(attribute))));
  const spki = AsnConvert.serialize(subjectPublicKeyInfo);
  const curve = CURVES.get(hexOf(subjectPublicKeyInfo.algorithm.parameters ?? new ArrayBuffer(0)));
  try {
    if (RSA.has(signatureAlgorithm.algorithm)) {
      const key = await importKey(spki, { name: 'RSASSA-PKCS1-v1_5', hash: digest });
      return await crypto.subtle.verify('RSASSA-PKCS1-v1_5', key, signature.buffer, data);
    }
    if (ECDSA.has(signatureAlgorithm.algorithm) && curve !== undefined) {
      const key = await importKey(spki, { name: 'ECDSA', namedCurve: curve.name });
      const raw = plainSignature(signature.buffer, curve.bytes);
      return raw !== null && (await crypto.subtle.verify({ name: 'ECDSA', hash: digest }, key, raw, data));
    }
  } catch {
    // DataError: the key of the certificate is none of its kind.
    return false;
  }
  return null;
}

/** What is signed: the set of the attributes itself, not the tagged field that they stand in (RFC 5652, section 5.4). */
function setOf(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const body = concatBytes(...parts);
  const length = body.length;
  const head = length < 0x80 ? [length] : length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return concatBytes(Uint8Array.of(0x31, ...head), body);
}

const importKey = (spki: ArrayBuffer, algorithm: RsaHashedImportParams | EcKeyImportParams) =>
  crypto.subtle.importKey('spki', spki, algorithm, false, ['verify']);

/** RSA by itself and with SHA-256, 384 and 512 (RFC 4055); ECDSA with the same (RFC 5758). */
const RSA = new Set(['1', '11', '12', '13'].map((last) => `1.2.840.113549.1.1.${last}`));
const ECDSA = new Set(['2', '3', '4'].map((last) => `1.2.840.10045.4.3.${last}`));
/** By the DER of the curve's identifier (RFC 5480). */
const CURVES = new Map([
  ['06082a8648ce3d030107', { name: 'P-256', bytes: 32 }],
  ['06052b81040022', { name: 'P-384', bytes: 48 }],
  ['06052b81040023', { name: 'P-521', bytes: 66 }],
]);

/** The two numbers of an ECDSA signature side by side, as Web Crypto wants them; null when they are none (RFC 3279). */
function plainSignature(der: ArrayBuffer, bytes: number): Uint8Array<ArrayBuffer> | null {
  const all = new Uint8Array(der);
  const plain = new Uint8Array(2 * bytes);
  let at = all[1] === 0x81 ? 3 : 2;
  for (const end of [bytes, 2 * bytes]) {
    const length = all[at + 1] ?? 0;
    const number = all.subarray(at + 2, at + 2 + length);
    const from = number.findIndex((byte) => byte !== 0);
    const digits = from === -1 ? number.subarray(length) : number.subarray(from);
    if (all[at] !== 0x02 || digits.length > bytes) return null;
    plain.set(digits, end - digits.length);
    at += 2 + length;
  }
  return at === all.length ? plain : null;
}

const hexOf = (buffer: ArrayBuffer): string => bytesToHex(new Uint8Array(buffer));
