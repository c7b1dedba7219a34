import * as z from 'zod/mini';
import { instantSchema } from '../../domain/time/instant.ts';
import { canonicalJson } from '../../journal/canonical-json.ts';
import { type ChainHead, chainHeadSchema } from '../../journal/chain-head.ts';
import { bytesOfHex, hexOf } from '../keys/hex.ts';
import { keyOfSeed, verifies } from '../keys/user-key.ts';

/**
 * The ends of the others' chains as a device had them when it wrote, by its own clock, signed with the key that the server
 * knows it by. Whoever writes his past anew would have to make every device that saw it sign anew as well.
 */
export const seenSchema = z.strictObject({
  at: instantSchema,
  heads: z.array(chainHeadSchema).check(z.minLength(1), z.maxLength(100)),
  signature: z.string().check(z.regex(/^[0-9a-f]{128}$/)),
});
export type Seen = z.infer<typeof seenSchema>;
export type UnsignedSeen = Pick<Seen, 'at' | 'heads'>;

/** Words of its own first, so that a signature of anything else never passes for one of these. */
const text = (by: string, { at, heads }: UnsignedSeen): string => `Headroom seen ${canonicalJson({ by, at, heads })}`;
const bytes = (by: string, seen: UnsignedSeen): Uint8Array => new TextEncoder().encode(text(by, seen));

/** @param by the device that saw them */
export function signSeen(by: string, seen: UnsignedSeen, seed: string): Seen {
  const heads = seen.heads.map(({ device, sequence, hash }): ChainHead => ({ device, sequence, hash }));
  const plain = { at: seen.at, heads };
  return { ...plain, signature: hexOf(keyOfSeed(seed).sign(bytes(by, plain))) };
}

export const isSeenBy = (by: string, { signature, ...seen }: Seen, userKey: string): boolean =>
  verifies(userKey, bytes(by, seen), bytesOfHex(signature));
