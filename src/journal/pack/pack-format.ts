import * as z from 'zod/mini';
import { lotIdSchema } from '../../domain/lot/lot.ts';
import { attachmentSchema } from '../../domain/sale/attachment.ts';
import { instantSchema } from '../../domain/time/instant.ts';
import { chainHeadSchema } from '../chain-head.ts';
import { deviceIdSchema, entryIdSchema, hashSchema, rowsSchema, saltSchema } from '../ids.ts';
import { envelopeSchema } from '../read-entry.ts';
import { signedHeadSchema } from '../signed-head.ts';
import { stampsSchema } from '../stamp/stamp-format.ts';
import { witnessSchema } from '../witness.ts';

/**
 * The data of an evidence pack: JSON Lines inside a page that anyone can read. First the head, then for every device that
 * wrote about the lot its chain from the first such entry to the last entry of all, in the order of the ids, then the files
 * that are in the page, then a seal. A line of the chain is one of four:
 *
 * - `entry`: a whole entry, as it is stored. Its hash can be made again from it.
 * - `held`: an entry whose content is held back (other lots, or what the user keeps to himself). In the place of
 *   what happened and the salt stands the content's hash, from which the entry's hash can be made again; what it was can't
 *   be found out by trying, because the salt is not shown.
 * - `batch`: an entry that brought many lots in, of which one row is shown: the content's hash follows from the row and its
 *   path (row-tree.ts), and the entry's hash from that.
 * - `bare`: an entry of the earliest kind, without a salt, held back: only its place in the chain. Its hash is taken on trust.
 *
 * Version 1 had no `batch`, no signatures, and did not say what it shows. A version that is known is never changed, and each
 * is held to the same rules.
 */
export const PACK_FORMAT = 'headroom-evidence';
export const PACK_VERSION = 2;

const headShape = {
  format: z.literal(PACK_FORMAT),
  madeAt: instantSchema,
  lot: lotIdSchema,
};
export const packHeadSchema = z.discriminatedUnion('version', [
  z.strictObject({
    ...headShape,
    version: z.literal(1),
    heads: z.array(chainHeadSchema).check(z.minLength(1)),
  }),
  z.strictObject({
    ...headShape,
    version: z.literal(PACK_VERSION),
    /** How much of the lot's own entries is shown, by the choice of the one who made it. */
    shows: z.enum(['sale', 'dispute', 'everything']),
    /** The last entry of each device in it. */
    heads: z.array(signedHeadSchema).check(z.minLength(1)),
    /** Time stamps of entries in it, by outside authorities. */
    stamps: z.optional(stampsSchema),
    /** What the server of a team and its devices say of the chains in it; only of those who are in one. */
    witness: z.optional(witnessSchema),
  }),
]);
export type PackHead = z.infer<typeof packHeadSchema>;

/** What a reader of every version looks at first. */
export const anyPackHeadSchema = z.looseObject({ format: z.literal(PACK_FORMAT), version: z.number() });

/** What every line of a chain has but a bare one. */
const placeShape = {
  id: entryIdSchema,
  at: instantSchema,
  author: z.string(),
  device: deviceIdSchema,
  version: z.int().check(z.gte(1)),
  sequence: z.int().check(z.gte(1)),
  subject: z.string().check(z.minLength(1), z.maxLength(200)),
  previous: z.union([z.literal(''), hashSchema]),
  hash: hashSchema,
};
/** What a line that holds something back must not have: its hash would not cover it. */
const notCovered = { happening: z.optional(z.undefined()), salt: z.optional(z.undefined()) };

/** Everything of an entry but what happened; a later version may have more fields, which its hash covers as well. */
export const heldSchema = z.looseObject({
  ...placeShape,
  ...notCovered,
  content: hashSchema,
});

export const batchSchema = z.looseObject({
  ...placeShape,
  ...notCovered,
  content: z.optional(z.undefined()),
  rows: rowsSchema,
  /** The row that brought this lot in. */
  row: z.strictObject({
    index: z.int().check(z.gte(1)),
    lot: z.looseObject({ id: lotIdSchema }),
    salt: saltSchema,
    path: z.array(hashSchema).check(z.maxLength(40)),
  }),
});
export type BatchLine = z.infer<typeof batchSchema>;

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
  z.strictObject({ batch: batchSchema }),
  z.strictObject({ bare: bareSchema }),
  z.strictObject({ file: z.pick(attachmentSchema, { hash: true, name: true, mediaType: true, sizeBytes: true }) }),
]);
export type PackLine = z.infer<typeof packLineSchema>;

/** `page` is the SHA-256 of all of the page before the data, `data` that of the lines before this one. */
export const packSealSchema = z.strictObject({ seal: z.strictObject({ page: hashSchema, data: hashSchema }) });
