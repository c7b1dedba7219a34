import * as z from 'zod/mini';
import { type DeviceId, deviceIdSchema, hashSchema } from './entry.ts';
import type { ChainLink } from './verify-chain.ts';

/**
 * The last entry of one device. Written down outside this computer (on paper, in a mail to oneself), it proves later that
 * everything up to it is as it was: its hash depends on every entry before it.
 */
export const chainHeadSchema = z.strictObject({
  device: deviceIdSchema,
  sequence: z.int().check(z.gte(1)),
  hash: hashSchema,
});
export type ChainHead = z.infer<typeof chainHeadSchema>;

/** The head of each device, by device. */
export function chainHeads(links: Iterable<Pick<ChainLink, 'device' | 'sequence' | 'hash'>>): ChainHead[] {
  const heads = new Map<DeviceId, ChainHead>();
  for (const { device, sequence, hash } of links)
    if (sequence > (heads.get(device)?.sequence ?? 0))
      heads.set(device, { device, sequence, hash: hashSchema.parse(hash) });
  return [...heads.values()].sort((a, b) => (a.device < b.device ? -1 : 1));
}

/**
 * What a head that was written down says about the journal of today: it is `kept` when that entry is still there with
 * that hash, `rewritten` when another stands in its place, `cut-off` when the chain ends before it. Only means something
 * for a chain in which verifyChain finds nothing.
 */
export function compareNotedHead(
  noted: ChainHead,
  links: Iterable<Pick<ChainLink, 'device' | 'sequence' | 'hash'>>,
): 'kept' | 'rewritten' | 'cut-off' {
  for (const { device, sequence, hash } of links)
    if (device === noted.device && sequence === noted.sequence) return hash === noted.hash ? 'kept' : 'rewritten';
  return 'cut-off';
}
