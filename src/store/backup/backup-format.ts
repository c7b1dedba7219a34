import * as z from 'zod/mini';
import { instantSchema } from '../../domain/time/instant.ts';
import { chainHeadSchema } from '../../journal/chain-head.ts';
import { hashSchema } from '../../journal/ids.ts';
import { signedHeadSchema } from '../../journal/signed-head.ts';
import { stampsSchema } from '../../journal/stamp/stamp-format.ts';

/**
 * A backup is text in UTF-8, a JSON value a line (JSON Lines): this header, then every entry as it is stored in the order
 * of the ids, then the attached files, then a line with the SHA-256 of all bytes before that line. Views are not in it;
 * they follow from the entries.
 *
 * A file is a line `{"file":{hash,sizeBytes,mediaType}}`, then its bytes in base 64 (RFC 4648), in lines `{"bytes":"…"}` of
 * at most FILE_PART bytes each. Version 1 had no files; version 2 neither counted them nor signed the ends of chains.
 *
 * A backup of an older version is always read. A change that older readers cannot take raises BACKUP_VERSION.
 */
export const BACKUP_FORMAT = 'headroom-backup';
export const BACKUP_VERSION = 3;

const count = z.int().check(z.gte(0));
const oldCounts = z.strictObject({ entries: count, lots: count });
const anyShape = { format: z.literal(BACKUP_FORMAT), exportedAt: instantSchema };

export const backupHeaderSchema = z.discriminatedUnion('version', [
  z.strictObject({ ...anyShape, version: z.literal(1), counts: oldCounts, heads: z.array(chainHeadSchema) }),
  z.strictObject({ ...anyShape, version: z.literal(2), counts: oldCounts, heads: z.array(chainHeadSchema) }),
  z.strictObject({
    ...anyShape,
    version: z.literal(BACKUP_VERSION),
    counts: z.strictObject({ entries: count, lots: count, files: count }),
    /** The last entry of each device. */
    heads: z.array(signedHeadSchema),
    /** Time stamps of entries in it, by outside authorities. */
    stamps: z.optional(stampsSchema),
  }),
]);
export type BackupHeader = z.infer<typeof backupHeaderSchema>;

export const fileHeaderSchema = z.strictObject({
  file: z.strictObject({ hash: hashSchema, sizeBytes: z.int().check(z.gte(1)), mediaType: z.string() }),
});
export type FileHeader = z.infer<typeof fileHeaderSchema>;
export const filePartSchema = z.strictObject({ bytes: z.string() });
/** A multiple of three, so that no line but the last of a file is padded. */
export const FILE_PART = 3 * 2 ** 18;

export const backupEndSchema = z.strictObject({ sha256: hashSchema });
