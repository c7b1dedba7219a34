import * as z from 'zod/mini';
import { instantSchema } from '../domain/time/instant.ts';
import { type Entry, entrySchema, JOURNAL_VERSION } from './entry.ts';
import { deviceIdSchema, entryIdSchema, hashSchema, rowsSchema, saltSchema } from './ids.ts';

/** What every entry has had since the first version and will have in every later one; the rest is carried along unread. */
export const envelopeSchema = z.looseObject({
  id: entryIdSchema,
  at: instantSchema,
  author: z.string(),
  device: deviceIdSchema,
  version: z.int().check(z.gte(1)),
  sequence: z.int().check(z.gte(1)),
  subject: z.string().check(z.minLength(1), z.maxLength(200)),
  happening: z.looseObject({ kind: z.string() }),
  previous: z.union([z.literal(''), hashSchema]),
  salt: z.optional(saltSchema),
  rows: z.optional(rowsSchema),
  hash: hashSchema,
  /** Stands for what happened where an entry is held back; in a whole entry its hash would not cover it. */
  content: z.optional(z.undefined()),
});
/** An entry as it is stored: whatever version wrote it, nothing added, nothing left out. */
export type Envelope = z.infer<typeof envelopeSchema>;

/**
 * - `known`: this version understands it;
 * - `unknown`: a newer version wrote it, and something in it is new. It is kept, passed on in backups and counted in the
 *   chain, but changes nothing here until this Headroom is updated;
 * - `unreadable`: it is damaged, or was never an entry.
 */
export type ReadEntry =
  | { readonly as: 'known'; readonly entry: Entry; readonly raw: Envelope }
  | { readonly as: 'unknown'; readonly raw: Envelope }
  | { readonly as: 'unreadable'; readonly message: string };

export function readEntry(raw: unknown): ReadEntry {
  const entry = entrySchema.safeParse(raw);
  // The strict schema asks for all that the envelope asks for, so `raw` is one.
  if (entry.success && !countsRows(entry.data))
    return { as: 'unreadable', message: 'rows: another count than it holds' };
  if (entry.success) return { as: 'known', entry: entry.data, raw: raw as Envelope };
  const envelope = envelopeSchema.safeParse(raw);
  if (!envelope.success) return { as: 'unreadable', message: firstIssue(envelope.error) };
  if (envelope.data.version > JOURNAL_VERSION) return { as: 'unknown', raw: raw as Envelope };
  return { as: 'unreadable', message: firstIssue(entry.error) };
}

function countsRows({ rows, salt, happening }: Entry): boolean {
  if (rows === undefined) return true;
  return salt !== undefined && happening.kind === 'lots-added' && happening.lots.length === rows;
}

/** Where the first thing wrong is, and what is wrong with it, for a sentence: `happening.set.miles: Invalid input`. */
export function firstIssue(error: z.core.$ZodError): string {
  const issue = error.issues[0];
  if (issue === undefined) return error.message;
  const where = issue.path.map(String).join('.');
  return where === '' ? issue.message : `${where}: ${issue.message}`;
}
