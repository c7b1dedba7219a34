/*! What was noted elsewhere, and the signatures. */
import { createPublicKey, verify } from 'node:crypto';

const WRITTEN =
  /\b([0-9A-HJKMNP-TV-Z]{10})\b[^0-9]{1,40}?\b(?:(\d{1,12})|key)\b[\s\S]{1,40}?\b((?:[0-9a-f]\s*){63}[0-9a-f])\b/gi;

/** What was noted, out of the words around it; null when it can't be read. */
export function readNoted(texts) {
  const noted = { heads: [], keys: [] };
  for (const text of texts) {
    const before = noted.heads.length + noted.keys.length;
    const rest = text.replace(WRITTEN, (_, device, number, digits) => {
      const hash = digits.replace(/\s/g, '').toLowerCase();
      if (number === undefined) noted.keys.push({ device: device.toUpperCase(), publicKey: hash });
      else noted.heads.push({ device: device.toUpperCase(), sequence: Number(number), hash });
      return ' ';
    });
    if (noted.heads.length + noted.keys.length === before || /[0-9a-f]{24}/i.test(rest)) return null;
  }
  return noted;
}

export function checkNoted({ links, noted, wrong, told, kept }) {
  for (const { device, sequence, hash } of noted.heads) {
    const chain = links.filter((link) => link.device === device);
    const there = chain.find((link) => link.sequence === sequence);
    const name = `The noted fingerprint of entry ${sequence} of ${device}`;
    if (there?.hash === hash) kept.push({ device, sequence });
    else if (there !== undefined)
      wrong.push(`Entry ${sequence} of ${device} is not the one you noted: the chain was rewritten.`);
    else if (chain.length === 0) wrong.push(`${name} can't be compared: nothing of that device is in this file.`);
    else if (sequence < chain[0].sequence) told.push(`${name} can't be compared: the file begins after it.`);
    else wrong.push(`${name} is not in this file: the chain was cut short before it, or the file is older.`);
  }
}

/** Ed25519 keys of small order (RFC 8032, section 5.1.3), the bit of the sign left out: for these a signature fits anything. */
const SMALL_ORDER = new Set([
  `01${'00'.repeat(31)}`,
  '00'.repeat(32),
  `ec${'ff'.repeat(30)}7f`,
  `ed${'ff'.repeat(30)}7f`,
  `ee${'ff'.repeat(30)}7f`,
  '26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc05',
  'c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a',
]);

export function checkSigned({ head, noted, wrong, told, signed }) {
  if (head.version === 1) told.push('An earlier Headroom made this pack. It could not sign one.');
  for (const { device, sequence, hash, signed: by } of head.heads) {
    const name = `The signature of entry ${sequence} of ${device}`;
    const known = noted.keys.filter((key) => key.device === device).map(({ publicKey }) => publicKey);
    if (by === undefined && head.version > 1) told.push(`The last line of device ${device} is not signed.`);
    else if (by === undefined) continue;
    else if (!fits(`Headroom head ${device}:${sequence}:${hash}`, by)) wrong.push(`${name} does not fit.`);
    else if (known.length > 0 && !known.includes(by.publicKey))
      wrong.push(`${name} is by a different key than the one you noted.`);
    else signed.push({ device, sequence, isKnown: known.length > 0 });
  }
}

/** Whether a text was signed with a key (Ed25519, RFC 8032). */
export function fits(text, { publicKey, signature }) {
  const bytes = Buffer.from(publicKey, 'hex');
  const plain = Buffer.from(bytes);
  plain[31] &= 0x7f;
  if (SMALL_ORDER.has(plain.toString('hex'))) return false;
  try {
    // The key with the header that names its kind (RFC 8410).
    const der = Buffer.concat([Buffer.from('302a300506032b6570032100', 'hex'), bytes]);
    const key = createPublicKey({ key: der, format: 'der', type: 'spki' });
    return verify(null, Buffer.from(text), key, Buffer.from(signature, 'hex'));
  } catch {
    return false;
  }
}
