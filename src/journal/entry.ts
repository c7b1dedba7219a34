import * as z from 'zod/mini';
import { lotFactsSchema, lotIdSchema, lotSourceSchema } from '../domain/lot/lot.ts';
import { setupSectionsSchema } from '../domain/setup/setup.ts';
import { instantSchema } from '../domain/time/instant.ts';

/** 26 characters of Crockford base 32 (the ULID layout): 48 bits of time, then a counter and randomness; sorts by time. */
export const entryIdSchema = z
  .string()
  .check(z.regex(/^[0-9A-HJKMNP-TV-Z]{26}$/))
  .brand<'EntryId'>();
export type EntryId = z.infer<typeof entryIdSchema>;

/** 10 characters of Crockford base 32, drawn at random when a browser first opens the store. */
export const deviceIdSchema = z
  .string()
  .check(z.regex(/^[0-9A-HJKMNP-TV-Z]{10}$/))
  .brand<'DeviceId'>();
export type DeviceId = z.infer<typeof deviceIdSchema>;

/** Who wrote an entry, by his own word. */
export const authorSchema = z.string().check(z.minLength(1), z.maxLength(80));

/** SHA-256 in lower-case hexadecimal. */
export const hashSchema = z
  .string()
  .check(z.regex(/^[0-9a-f]{64}$/))
  .brand<'Hash'>();
export type Hash = z.infer<typeof hashSchema>;

/**
 * The version of the happenings below. A release that adds a kind or a field raises it. A reader that meets a higher
 * number and cannot read the happening keeps it untouched (see read-entry.ts); with a number it knows, that is damage.
 */
export const JOURNAL_VERSION = 1;

/** Where a field's value came from, and how sure that is. */
export const evidenceSchema = z.strictObject({
  from: z.enum(['typed', 'pasted', 'file', 'structured-data', 'page-text', 'pointed']),
  /** The very text it was read from. */
  text: z.string().check(z.maxLength(400)),
  sure: z.enum(['certain', 'likely', 'doubtful']),
});
export type Evidence = z.infer<typeof evidenceSchema>;
const evidenceByField = z._default(z.record(z.string(), evidenceSchema), {});

const newLotSchema = z.strictObject({
  id: lotIdSchema,
  facts: lotFactsSchema,
  evidence: evidenceByField,
});
export type NewLot = z.infer<typeof newLotSchema>;

/** What can happen. One member a kind; a kind that shipped is never renamed or narrowed. */
export const happeningSchema = z.discriminatedUnion('kind', [
  /** One or many lots came in at once; an import of 50,000 is a few hundred of these. */
  z.strictObject({
    kind: z.literal('lots-added'),
    source: lotSourceSchema,
    lots: z.array(newLotSchema).check(z.minLength(1)),
  }),
  /** Fields of a lot were set or emptied. */
  z.strictObject({
    kind: z.literal('lot-changed'),
    set: lotFactsSchema,
    clear: z._default(z.array(z.keyof(lotFactsSchema)), []),
    evidence: evidenceByField,
  }),
  /** The buyer stopped watching a lot; it stays in the journal. */
  z.strictObject({ kind: z.literal('lot-dropped') }),
  /** Sections of the setup were replaced. */
  z.strictObject({
    kind: z.literal('setup-changed'),
    set: z.partial(setupSectionsSchema),
  }),
  /** Alerts that were shown, by their stable keys. */
  z.strictObject({
    kind: z.literal('alerts-shown'),
    keys: z.array(z.string()).check(z.minLength(1)),
  }),
  /** An earlier entry no longer counts; undoing an undo brings it back. */
  z.strictObject({ kind: z.literal('undone'), entry: entryIdSchema }),
]);
export type Happening = z.infer<typeof happeningSchema>;

/** What an entry is about: `lot:<id>`, `setup`, `lots` (a batch) or `alerts`. */
export const subjectSchema = z
  .string()
  .check(z.regex(/^(setup|lots|alerts|lot:[0-9A-HJKMNP-TV-Z]{26})$/))
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
  hash: hashSchema,
});
export type Entry = z.infer<typeof entrySchema>;
