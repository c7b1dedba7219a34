import * as z from 'zod/mini';
import { type DeviceId, deviceIdSchema, hashSchema } from './ids.ts';
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

/** A head as it is noted down: on one line, to be copied, and given to the check later. */
export const writeHead = ({ device, sequence, hash }: ChainHead): string => `${device}:${sequence}:${hash}`;

/** The head of each device, by device. */
export function chainHeads(links: Iterable<Pick<ChainLink, 'device' | 'sequence' | 'hash'>>): ChainHead[] {
  const heads = new Map<DeviceId, ChainHead>();
  for (const { device, sequence, hash } of links)
    if (sequence > (heads.get(device)?.sequence ?? 0))
      heads.set(device, { device, sequence, hash: hashSchema.parse(hash) });
  return [...heads.values()].sort((a, b) => (a.device < b.device ? -1 : 1));
}
