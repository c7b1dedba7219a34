import * as z from 'zod/mini';
import { instantSchema } from '../../domain/time/instant.ts';
import { type ChainHead, chainHeadSchema } from '../../journal/chain-head.ts';
import type { DeviceId } from '../../journal/ids.ts';
import { sightingText } from '../../journal/witness.ts';
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

const bytes = (by: DeviceId, { at, heads }: UnsignedSeen): Uint8Array =>
  new TextEncoder().encode(sightingText({ by, at, heads }));

/** @param by the device that saw them */
export function signSeen(by: DeviceId, seen: UnsignedSeen, seed: string): Seen {
  const heads = seen.heads.map(({ device, sequence, hash }): ChainHead => ({ device, sequence, hash }));
  const plain = { at: seen.at, heads };
  return { ...plain, signature: hexOf(keyOfSeed(seed).sign(bytes(by, plain))) };
}

export const isSeenBy = (by: DeviceId, { signature, ...seen }: Seen, userKey: string): boolean =>
  verifies(userKey, bytes(by, seen), bytesOfHex(signature));
