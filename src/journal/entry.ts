import * as z from 'zod/mini';
import { instantSchema } from '../domain/time/instant.ts';
import { happeningSchema } from './happening.ts';
import { authorSchema, deviceIdSchema, entryIdSchema, hashSchema, rowsSchema, saltSchema } from './ids.ts';

/**
 * The version of the happenings. A release that adds a kind or a field raises it. A reader that meets a higher
 * number and cannot read the happening keeps it untouched (see read-entry.ts); with a number it knows, that is damage.
 */
export const JOURNAL_VERSION = 5;

/** What an entry is about: `lot:<id>`, `setup`, `lots` (a batch), `alerts` or `books`. */
export const subjectSchema = z
  .string()
  .check(z.regex(/^(setup|lots|alerts|books|lot:[0-9A-HJKMNP-TV-Z]{26})$/))
  .brand<'Subject'>();
export type Subject = z.infer<typeof subjectSchema>;

/**
 * One thing that happened. Immutable: nothing in it is ever changed or removed. `hash` covers every other field, and
 * `previous` is the hash of the entry before it on the same device, so that a later change anywhere shows.
 */
export const entrySchema = z.strictObject({
  id: entryIdSchema,
  at: instantSchema,
  author: authorSchema,
  device: deviceIdSchema,
  /** The JOURNAL_VERSION it was written with. */
  version: z.int().check(z.gte(1)),
  /** 1 for the first entry of the device, then one more each. */
  sequence: z.int().check(z.gte(1)),
  subject: subjectSchema,
  happening: happeningSchema,
  previous: z.union([z.literal(''), hashSchema]),
  /**
   * Random, so that the hash of what happened can be shown without letting anyone find out by trying what it was; see
   * entry-hash.ts. Absent in the earliest entries.
   */
  salt: z.optional(saltSchema),
  /** How many rows it brought in, where each can be shown without the others; see row-tree.ts. */
  rows: z.optional(rowsSchema),
  hash: hashSchema,
});
export type Entry = z.infer<typeof entrySchema>;
