/*! Time stamps of outside authorities: RFC 3161, in the DER of X.690, signed as RFC 5652 says. No authority is trusted by itself. */
import { createHash, verify, X509Certificate } from 'node:crypto';

/** A value of DER: its tag, its content, all its bytes, and what is in it. */
function readDer(bytes, at = 0) {
  const tag = bytes[at];
  let length = bytes[at + 1];
  let from = at + 2;
  if (length >= 0x80) {
    const more = length & 0x7f;
    if (more === 0 || more > 4) throw new Error('length');
    length = bytes.readUIntBE(from, more);
    from += more;
  }
  const end = from + length;
  if (tag === undefined || !(end <= bytes.length)) throw new Error('cut');
  return { tag, body: bytes.subarray(from, end), all: bytes.subarray(at, end), end };
}

function partsOf({ body }) {
  const parts = [];
  for (let at = 0; at < body.length; ) {
    const part = readDer(body, at);
    parts.push(part);
    at = part.end;
  }
  return parts;
}

const oid = (part) => (part?.tag === 0x06 ? part.body.toString('hex') : null);
const SIGNED_DATA = '2a864886f70d010702';
const TIME_STAMP = '2a864886f70d0109100104';
const SHA_256 = '608648016503040201';
const DIGESTS = { [SHA_256]: 'sha256', '608648016503040202': 'sha384', '608648016503040203': 'sha512' };
const CONTENT_TYPE = '2a864886f70d010903';
const MESSAGE_DIGEST = '2a864886f70d010904';
const SIGNING_CERTIFICATE = { '2a864886f70d010910020c': 'sha1', '2a864886f70d010910022f': 'sha256' };
/** RSA and ECDSA, alone and with SHA-256, 384 and 512. */
const KNOWN_WAYS = /^(?:2a864886f70d0101(?:01|0b|0c|0d)|2a8648ce3d0403(?:02|03|04))$/;
const FOR_STAMPS = '1.3.6.1.5.5.7.3.8';

const digest = (name, bytes) => createHash(name).update(bytes).digest();

/** `{ at, authority, issuer }` of a stamp that holds, `{ bad }` with what is wrong, or `{ unknown }`. */
export function checkStamp({ device, sequence, hash, token }) {
  const bytes = Buffer.from(token, 'base64');
  if (bytes.toString('base64') !== token) return { bad: 'it is not in base 64' };
  try {
    return checkToken(bytes, digest('sha256', `${device}:${sequence}:${hash}`));
  } catch {
    return { bad: 'it can’t be read' };
  }
}

function checkToken(bytes, imprint) {
  const outer = readDer(bytes);
  if (outer.end !== bytes.length) return { bad: 'something was added to it' };
  const [type, wrapped] = partsOf(outer);
  if (oid(type) !== SIGNED_DATA) return { bad: 'it is not signed' };
  const [, digests, content, ...rest] = partsOf(partsOf(wrapped)[0]);
  const [contentType, held] = partsOf(content);
  if (oid(contentType) !== TIME_STAMP) return { bad: 'it is no time stamp' };
  const octets = partsOf(held)[0].body;
  const [, , messageImprint, , genTime] = partsOf(readDer(octets));
  const [algorithm, hashed] = partsOf(messageImprint);
  if (oid(partsOf(algorithm)[0]) !== SHA_256) return { bad: 'it is over another hash than SHA-256' };
  if (!hashed.body.equals(imprint)) return { bad: 'it is of another fingerprint' };
  const certificates = rest.filter(({ tag }) => tag === 0xa0).flatMap(partsOf);
  const signers = partsOf(rest.find(({ tag }) => tag === 0x31));
  if (signers.length !== 1) return { bad: 'it is not signed by one authority' };
  const at = timeOf(genTime.body.toString('latin1'));
  const announced = partsOf(digests).map((one) => oid(partsOf(one)[0]));
  return checkSigner(partsOf(signers[0]), { certificates, octets, at, announced });
}

function checkSigner(
  [, sid, digestAlgorithm, attributes, signatureAlgorithm, signature],
  { certificates, octets, at, announced },
) {
  const name = DIGESTS[oid(partsOf(digestAlgorithm)[0])];
  if (name === undefined || !announced.includes(oid(partsOf(digestAlgorithm)[0])))
    return { bad: 'it is signed over a hash that is too weak, or not known here' };
  const own = certificates.find((one) => isOf(one, sid));
  if (own === undefined) return { bad: 'the certificate of its authority is not in it' };
  const certificate = new X509Certificate(own.all);
  if (!isForStamps(own, certificate)) return { bad: 'it is signed with a certificate that is not for time stamps' };
  if (at < Date.parse(certificate.validFrom) || at > Date.parse(certificate.validTo))
    return { bad: 'its certificate did not hold at its time' };
  if (attributes.tag !== 0xa0) return { bad: 'what it says is not signed' };
  const valueOfType = (wanted) => {
    const found = partsOf(attributes)
      .map(partsOf)
      .filter(([type]) => oid(type) === wanted);
    return found.length === 1 ? partsOf(found[0][1])[0] : undefined;
  };
  if (oid(valueOfType(CONTENT_TYPE)) !== TIME_STAMP) return { bad: 'it is signed as something else than a time stamp' };
  if (!valueOfType(MESSAGE_DIGEST)?.body.equals(digest(name, octets)))
    return { bad: 'what it says was changed after it was signed' };
  const named = Object.entries(SIGNING_CERTIFICATE).find(([type]) => valueOfType(type) !== undefined);
  if (named === undefined || !valueOfType(named[0]).all.includes(digest(named[1], own.all)))
    return { bad: 'it is signed for another certificate' };
  if (!KNOWN_WAYS.test(oid(partsOf(signatureAlgorithm)[0])))
    return { unknown: 'it is signed in a way that this script can’t check' };
  // Signed is the set itself, not the tagged field that it stands in.
  const signed = Buffer.from(attributes.all);
  signed[0] = 0x31;
  if (!verify(name, signed, certificate.publicKey, signature.body)) return { bad: 'its signature does not fit' };
  return { at, authority: nameOf(certificate.subject), issuer: nameOf(certificate.issuer) };
}

/** Whether a signer names this certificate: by issuer and number, or by the identifier of its key. */
function isOf(certificate, sid) {
  const fields = partsOf(partsOf(certificate)[0]);
  const [serial, , issuer] = fields[0].tag === 0xa0 ? fields.slice(1) : fields;
  if (sid.tag !== 0x30) return sid.body.length > 0 && certificate.all.includes(sid.body);
  const [by, number] = partsOf(sid);
  return by.all.equals(issuer.all) && number.body.equals(serial.body);
}

/** Only for time stamps, and marked as critical: OID 2.5.29.37, then TRUE. */
function isForStamps({ all }, { keyUsage }) {
  return keyUsage?.length === 1 && keyUsage[0] === FOR_STAMPS && all.includes(Buffer.from('0603551d250101ff', 'hex'));
}

/** GeneralizedTime as RFC 3161 has it: in UTC, with or without a fraction of a second. */
function timeOf(text) {
  const [, year, month, day, hour, minute, second, part = ''] =
    /^(\d{4})(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)(\.\d+)?Z$/.exec(text) ?? [];
  const at = Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}${part.slice(0, 4)}Z`);
  if (Number.isNaN(at)) throw new Error('time');
  return at;
}

const nameOf = (text) => {
  const part = (name) => new RegExp(`^${name}=(.*)$`, 'm').exec(text)?.[1];
  return [part('CN'), part('O')].filter(Boolean).join(', ') || 'nobody named';
};

/** Checks the stamps of a head, each against the line that it is said to be of. */
export function checkStamps({ head, links, wrong, told, stamped }) {
  if (head.version === 1) return;
  const { stamps = [] } = head;
  if (stamps.length === 0) told.push('No outside authority has put a time stamp on anything in it.');
  for (const stamp of stamps) {
    const name = `The time stamp of entry number ${stamp.sequence} of device ${stamp.device}`;
    const there = links.some(
      ({ device, sequence, hash }) => device === stamp.device && sequence === stamp.sequence && hash === stamp.hash,
    );
    const found = there ? checkStamp(stamp) : { bad: 'it is of an entry that is not in this file' };
    if (found.bad) wrong.push(`${name} does not hold: ${found.bad}.`);
    else if (found.unknown) told.push(`${name} says nothing here: ${found.unknown}.`);
    else stamped.push({ ...stamp, ...found });
  }
}
