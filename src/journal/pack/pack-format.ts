import * as z from 'zod/mini';
import { attachmentSchema } from '../../domain/sale/attachment.ts';
import { instantSchema } from '../../domain/time/instant.ts';
import { chainHeadSchema } from '../chain-head.ts';
import { deviceIdSchema, entryIdSchema, hashSchema } from '../ids.ts';
import { envelopeSchema } from '../read-entry.ts';

/**
 * The data of an evidence pack: JSON Lines inside a page that anyone can read. First the head, then for every device that
 * wrote about the lot its chain from the first such entry to the last entry of all, in the order of the ids, then the files
 * that are in the page, then a seal. A line of the chain is one of three:
 *
 * - `entry`: a whole entry, as it is stored. Its hash can be made again from it.
 * - `held`: an entry whose content is held back (other lots, or what the user keeps to himself). In the place of
 *   what happened and the salt stands the content's hash, from which the entry's hash can be made again; what it was can't
 *   be found out by trying, because the salt is not shown.
 * - `bare`: an entry of the earliest kind, without a salt, held back: only its place in the chain. Its hash is taken on trust.
 *
 * A later version is read by a later tool; a version that is known is never changed.
 */
export const PACK_FORMAT = 'headroom-evidence';
export const PACK_VERSION = 1;

export const packHeadSchema = z.strictObject({
  format: z.literal(PACK_FORMAT),
  version: z.literal(PACK_VERSION),
  madeAt: instantSchema,
  /** The lot's id. */
  lot: z.string(),
  /** The last entry of each device in it. */
  heads: z.array(chainHeadSchema).check(z.minLength(1)),
});
export type PackHead = z.infer<typeof packHeadSchema>;

/** Everything of an entry but what happened; a later version may have more fields, which its hash covers as well. */
export const heldSchema = z.looseObject({
  id: entryIdSchema,
  at: instantSchema,
  author: z.string(),
  device: deviceIdSchema,
  version: z.int(),
  sequence: z.int().check(z.gte(1)),
  subject: z.string(),
  previous: z.union([z.literal(''), hashSchema]),
  content: hashSchema,
  hash: hashSchema,
});

export const bareSchema = z.strictObject({
  id: entryIdSchema,
  device: deviceIdSchema,
  sequence: z.int().check(z.gte(1)),
  previous: z.union([z.literal(''), hashSchema]),
  hash: hashSchema,
});

export const packLineSchema = z.union([
  z.strictObject({ entry: envelopeSchema }),
  z.strictObject({ held: heldSchema }),
  z.strictObject({ bare: bareSchema }),
  z.strictObject({ file: z.pick(attachmentSchema, { hash: true, name: true, mediaType: true, sizeBytes: true }) }),
]);
export type PackLine = z.infer<typeof packLineSchema>;

/** `page` is the SHA-256 of all of the page before the data, `data` that of the lines before this one. */
export const packSealSchema = z.strictObject({ seal: z.strictObject({ page: hashSchema, data: hashSchema }) });
