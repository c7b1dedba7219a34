import * as z from 'zod/mini';
import { type Outcome, ok, refuse } from '../domain/outcome.ts';
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

const WRITTEN = /([0-9A-HJKMNP-TV-Z]{10})\W+(?:entry\W+)?(\d{1,12})\W+([0-9a-f]{64})/i;

/** A head as it is noted down: on one line, to be copied, and given to the check later. */
export const writeHead = ({ device, sequence, hash }: ChainHead): string => `${device}:${sequence}:${hash}`;

/** Reads a head that was noted down, also one that was copied with the words around it. */
export function readNotedHead(text: string): Outcome<ChainHead> {
  const [, device, sequence, hash] = WRITTEN.exec(text) ?? [];
  const head = chainHeadSchema.safeParse({
    device: device?.toUpperCase(),
    sequence: Number(sequence),
    hash: hash?.toLowerCase(),
  });
  return head.success
    ? ok(head.data)
    : refuse('no-fingerprint', 'Paste it whole: the device, the number of the entry and 64 letters and digits.');
}

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
