import { checkSignature, type DeviceKey, type SignedHead } from './signed-head.ts';

/**
 * Who signed the end of a chain:
 * - `known`: the key that was known of this device before, from elsewhere;
 * - `unknown key`: a key of which only this file says that it is the device's, which proves nothing by itself;
 * - `unsigned`; `bad`; `can’t tell`, where this browser has no Ed25519.
 */
export type SignerFound = 'known' | 'unknown key' | 'unsigned' | 'bad' | 'can’t tell';

interface SignersFound {
  readonly signers: ReadonlyMap<string, SignerFound>;
  readonly findings: readonly string[];
  readonly told: readonly string[];
}

/**
 * Checks the signatures of heads.
 * @param known keys that are known from elsewhere
 */
export async function checkSignatures(
  heads: readonly SignedHead[],
  known: readonly DeviceKey[],
): Promise<SignersFound> {
  const signers = new Map<string, SignerFound>();
  const findings: string[] = [];
  const told: string[] = [];
  for (const { signed, ...head } of heads) {
    const keys = known.filter(({ device }) => device === head.device).map(({ publicKey }) => publicKey);
    const found = signed === undefined ? 'unsigned' : await checkSignature(head, signed);
    const isKnown = signed !== undefined && keys.includes(signed.publicKey);
    const place = `of entry number ${head.sequence} of device ${head.device}`;
    if (found === 'bad') findings.push(`The signature ${place} does not fit.`);
    if (signed !== undefined && keys.length > 0 && !isKnown)
      findings.push(`The signature ${place} is by a different key than this device is known by.`);
    if (found === 'unsigned') told.push(`The last line of device ${head.device} is not signed.`);
    if (found === 'unknown') told.push('This browser can’t check signatures: it has no Ed25519.');
    signers.set(head.device, signerOf(found, isKnown));
  }
  return { signers, findings, told: [...new Set(told)] };
}

function signerOf(found: 'good' | 'bad' | 'unknown' | 'unsigned', isKnown: boolean): SignerFound {
  if (found === 'good') return isKnown ? 'known' : 'unknown key';
  return found === 'unknown' ? 'can’t tell' : found;
}
