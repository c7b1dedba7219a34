import { type Outcome, ok, refuse } from '../domain/outcome.ts';
import { type ChainHead, chainHeadSchema, writeHead } from './chain-head.ts';
import { type DeviceKey, deviceKeySchema, writeKey } from './signed-head.ts';

/** What somebody wrote down elsewhere while it mattered: fingerprints, and keys that devices sign with. */
export interface Noted {
  readonly heads: readonly ChainHead[];
  readonly keys: readonly DeviceKey[];
}

export const NOTHING_NOTED: Noted = { heads: [], keys: [] };

/** A device, then a number or the word `key`, then 64 digits, which a mail program may have broken over two lines. */
const WRITTEN =
  /\b([0-9A-HJKMNP-TV-Z]{10})\b[^0-9]{1,40}?\b(?:(\d{1,12})|key)\b[\s\S]{1,40}?\b((?:[0-9a-f]\s*){63}[0-9a-f])\b/gi;
/** The rest of a fingerprint that was not read. */
const LEFT_OVER = /[0-9a-f]{24}/i;

/** Reads all that was noted down out of a text, also with the words of a mail around it. */
export function readNoted(text: string): Outcome<Noted> {
  const heads: ChainHead[] = [];
  const keys: DeviceKey[] = [];
  const rest = text.replace(WRITTEN, (all, device: string, number: string | undefined, digits: string) => {
    const hash = digits.replaceAll(/\s/g, '').toLowerCase();
    const name = device.toUpperCase();
    const head = chainHeadSchema.safeParse({ device: name, sequence: Number(number), hash });
    const key = deviceKeySchema.safeParse({ device: name, publicKey: hash });
    if (number !== undefined && head.success) heads.push(head.data);
    else if (number === undefined && key.success) keys.push(key.data);
    else return all;
    return ' ';
  });
  if (heads.length + keys.length > 0 && !LEFT_OVER.test(rest)) return ok({ heads, keys });
  return refuse('no-fingerprint', 'Paste it whole: the device, the number of the entry and 64 letters and digits.');
}

/** As it is noted down, in one line. */
export const writeNoted = ({ heads, keys }: Noted): string =>
  [...heads.map(writeHead), ...keys.map(writeKey)].join(' ');
