import { bytesToHex } from '@noble/hashes/utils.js';
import { ContentInfo, id_signedData, SignedData } from '@peculiar/asn1-cms';
import { AsnConvert } from '@peculiar/asn1-schema';
import { id_ct_tstInfo, TSTInfo } from '@peculiar/asn1-tsp';
import type { Certificate } from '@peculiar/asn1-x509';
import { fromBase64 } from '../base64.ts';
import { isDer } from './der-shape.ts';
import { certificateFault, nameOf, signerOf } from './stamp-certificate.ts';
import { DIGESTS, imprintOf, SHA_256, type Stamp } from './stamp-format.ts';
import { attributesFault, verifySigner } from './stamp-signature.ts';

/**
 * What a stamp says: `good` with its time and by whose word; `bad` with what is wrong with it; `unknown` when it is signed in a
 * way that this browser can't check. Nobody is trusted because a file names him: whoever checks decides that.
 */
export type StampFound =
  | { readonly as: 'good'; readonly at: number; readonly authority: string; readonly issuer: string }
  | { readonly as: 'bad'; readonly message: string }
  | { readonly as: 'unknown'; readonly message: string };

const bad = (message: string): StampFound => ({ as: 'bad', message });

/** Holds a stamp against the head that it is said to be of (RFC 3161, section 2.4.2; RFC 5652, section 5.4 and 5.6). */
export async function checkStamp(stamp: Stamp): Promise<StampFound> {
  const bytes = fromBase64(stamp.token);
  if (bytes === null) return bad('it is not in base 64');
  const token = readToken(bytes);
  if (typeof token === 'string') return bad(token);
  try {
    return await checkToken(stamp, token);
  } catch {
    // A part of it that is read only here, such as what its certificate is for, is none.
    return bad('it can’t be read');
  }
}

async function checkToken(stamp: Stamp, { signed, info, content }: Token): Promise<StampFound> {
  if (info.messageImprint.hashAlgorithm.algorithm !== SHA_256) return bad('it is over another hash than SHA-256');
  if (!isSame(info.messageImprint.hashedMessage.buffer, await imprintOf(stamp)))
    return bad('it is of another fingerprint');
  const [signer, ...others] = signed.signerInfos;
  if (signer === undefined || others.length > 0) return bad('it is not signed by one authority');
  const certificate = signerOf(signed, signer);
  if (certificate === null) return bad('the certificate of its authority is not in it');
  const digest = DIGESTS.get(signer.digestAlgorithm.algorithm);
  const announced = [...signed.digestAlgorithms].some(
    ({ algorithm }) => algorithm === signer.digestAlgorithm.algorithm,
  );
  if (digest === undefined || !announced) return bad('it is signed over a hash that is too weak, or not known here');
  const fault =
    certificateFault(certificate, info.genTime) ?? (await attributesFault(signer, { content, digest, certificate }));
  if (fault !== null) return bad(fault);
  const fits = await verifySigner(signer, certificate, digest);
  if (fits === null) return { as: 'unknown', message: 'it is signed in a way that can’t be checked here' };
  return fits ? goodBy(certificate, info) : bad('its signature does not fit');
}

function goodBy({ tbsCertificate: { subject, issuer } }: Certificate, { genTime }: TSTInfo): StampFound {
  return { as: 'good', at: genTime.getTime(), authority: nameOf(subject), issuer: nameOf(issuer) };
}

/** The SHA-256 that a token says it is over, in hex; null when it is no token, or over another hash. */
export function imprintIn(bytes: Uint8Array<ArrayBuffer>): string | null {
  const token = readToken(bytes);
  if (typeof token === 'string') return null;
  const { hashAlgorithm, hashedMessage } = token.info.messageImprint;
  return hashAlgorithm.algorithm === SHA_256 ? bytesToHex(new Uint8Array(hashedMessage.buffer)) : null;
}

interface Token {
  readonly signed: SignedData;
  readonly info: TSTInfo;
  /** The bytes that the signed attributes have the digest of. */
  readonly content: ArrayBuffer;
}

/** The parts of a token, or what is wrong with it. */
function readToken(bytes: Uint8Array<ArrayBuffer>): Token | string {
  if (!isDer(bytes)) return 'it is cut, or something was changed in it or added to it';
  try {
    const outer = AsnConvert.parse(bytes, ContentInfo);
    if (outer.contentType !== id_signedData) return 'it is not signed';
    const signed = AsnConvert.parse(outer.content, SignedData);
    const { eContentType, eContent } = signed.encapContentInfo;
    const content = eContent?.single?.buffer;
    if (eContentType !== id_ct_tstInfo || content === undefined) return 'it is no time stamp';
    return { signed, info: AsnConvert.parse(content, TSTInfo), content };
  } catch {
    // Whatever the parser trips over: the bytes are no token.
    return 'it can’t be read';
  }
}

function isSame(a: ArrayBuffer, b: ArrayBuffer): boolean {
  const [left, right] = [new Uint8Array(a), new Uint8Array(b)];
  return left.length === right.length && left.every((byte, i) => byte === right[i]);
}
