import * as z from 'zod/mini';
import { instantSchema } from '../../domain/time/instant.ts';
import { chainHeadSchema } from '../../journal/chain-head.ts';
import { hashSchema } from '../../journal/entry.ts';

/**
 * A backup is text in UTF-8, a JSON value a line (JSON Lines): this header, then every entry as it is stored in the order
 * of the ids, then a line with the SHA-256 of all bytes before that line. Views are not in it; they follow from the entries.
 *
 * A file of an older version is always read. A change that older readers cannot take raises BACKUP_VERSION.
 */
export const BACKUP_FORMAT = 'headroom-backup';
export const BACKUP_VERSION = 1;

export const backupHeaderSchema = z.strictObject({
  format: z.literal(BACKUP_FORMAT),
  version: z.literal(BACKUP_VERSION),
  exportedAt: instantSchema,
  counts: z.strictObject({ entries: z.int().check(z.gte(0)), lots: z.int().check(z.gte(0)) }),
  heads: z.array(chainHeadSchema),
});
export type BackupHeader = z.infer<typeof backupHeaderSchema>;

export const backupEndSchema = z.strictObject({ sha256: hashSchema });
