import { generateKeyPairSync, sign } from 'node:crypto';
import { NotApplicable } from '../lib/case.mjs';

/**
 * Attacks on what a later format brings: heads that a device signs, and stamps of an outside authority. The adapter gives
 * access to the parts (see adapter.mjs); what is done to them is here.
 */

function signaturesOf(it) {
  const found = it.tools.signatures?.(it) ?? [];
  if (found.length === 0) throw new NotApplicable('waits for tools.signatures');
  return found;
}

/** @param how what is done to the signature of a device's head */
export function forgeSignature(it, { how, device = 'buyer', rewrite = false, close }) {
  signaturesOf(it);
  if (rewrite) {
    const at = it.one({ form: 'entry', device });
    it.set(at, { ...it.get(at), author: 'someone else' });
    const { signAnew } = it.hashes;
    it.hashes.signAnew = () => undefined;
    it.relink(at);
    it.fitHeader();
    it.hashes.signAnew = signAnew;
  }
  const all = signaturesOf(it);
  const own = all.find((signature) => signature.device === it.device(device)) ?? all[0];
  const other = all.find((signature) => signature !== own);
  const { publicKey, privateKey } = generateKeyPairSync('ed25519');
  const rawKey = publicKey.export({ format: 'der', type: 'spki' }).subarray(-32);
  switch (how) {
    case 'left as it was':
      break;
    case 'gone':
      own.remove();
      break;
    case 'all gone':
      for (const signature of all) signature.remove();
      break;
    case 'another key':
      own.set({ publicKey: rawKey, signature: sign(null, own.message(), privateKey) });
      break;
    case 'another key, the true one still named':
      own.set({ signature: sign(null, own.message(), privateKey) });
      break;
    case 'of another device':
      if (other === undefined) throw new NotApplicable('only one device signs');
      own.set({ signature: other.signature });
      break;
    case 'of another device, with its key':
      if (other === undefined) throw new NotApplicable('only one device signs');
      own.set({ publicKey: other.publicKey, signature: sign(null, own.message(), privateKey) });
      break;
    case 'one bit':
      own.set({ signature: turned(own.signature) });
      break;
    case 'zeros':
      own.set({ signature: Buffer.alloc(64) });
      break;
    // The neutral point as the key and a signature of neutral point and zero pass a careless check for every message (RFC 8032).
    case 'key of small order':
      own.set({
        publicKey: Buffer.concat([Buffer.from([1]), Buffer.alloc(31)]),
        signature: Buffer.concat([Buffer.from([1]), Buffer.alloc(63)]),
      });
      break;
    case 'not reduced':
      own.set({ signature: notReduced(own.signature) });
      break;
    case 'cut':
      own.set({ signature: own.signature.subarray(0, 63) });
      break;
    case 'longer':
      own.set({ signature: Buffer.concat([own.signature, Buffer.alloc(1)]) });
      break;
    case 'of an earlier head':
      if (own.earlier === undefined) throw new NotApplicable('waits for `earlier` of a signature');
      own.set({ signature: own.earlier });
      break;
    case 'meant for something else':
      if (own.elsewhere === undefined) throw new NotApplicable('waits for `elsewhere` of a signature');
      own.set({ signature: own.elsewhere });
      break;
    default:
      throw new Error(`unknown way: ${how}`);
  }
  return it.close({ header: 'keep', ...close });
}

const turned = (bytes) => {
  const copy = Buffer.from(bytes);
  copy[40] ^= 1;
  return copy;
};

/** S plus the order of the group: the same signature to a check that does not look whether S is small (RFC 8032, 5.1.7). */
function notReduced(signature) {
  const order = 2n ** 252n + 27742317777372353535851937790883648493n;
  let s = [...signature.subarray(32)].reduceRight((sum, byte) => sum * 256n + BigInt(byte), 0n) + order;
  const out = Buffer.from(signature);
  for (let i = 32; i < 64; i++, s /= 256n) out[i] = Number(s % 256n);
  return out;
}

/** @param how what is done to the stamp of an outside authority (RFC 3161) */
export function forgeStamp(it, { how, close }) {
  const [stamp] = it.tools.stamps?.(it) ?? [];
  if (stamp === undefined) throw new NotApplicable('waits for tools.stamps');
  switch (how) {
    case 'one bit':
      stamp.set(turned(stamp.token));
      break;
    case 'gone':
      stamp.remove();
      break;
    case 'cut':
      stamp.set(stamp.token.subarray(0, stamp.token.length - 30));
      break;
    case 'longer':
      stamp.set(Buffer.concat([stamp.token, Buffer.from([0, 0])]));
      break;
    case 'of another head':
    case 'of an authority of the attacker’s own':
    case 'of a certificate that is not for stamps':
    case 'of a weaker hash':
    case 'refused by the authority': {
      const made = stamp.others?.[how];
      if (made === undefined) throw new NotApplicable(`waits for the stamp “${how}”`);
      stamp.set(made);
      break;
    }
    default:
      throw new Error(`unknown way: ${how}`);
  }
  return it.close({ header: 'keep', ...close });
}
