import type { Attachment } from '../domain/sale/attachment.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Entry } from '../journal/entry.ts';
import type { EntryId } from '../journal/ids.ts';

/** A file that is kept with a lot, and the entry that says so. */
export interface KeptAttachment extends Attachment {
  readonly entry: EntryId;
  readonly at: Instant;
  readonly author: string;
}

/** The files of a lot after an entry about it that counts; the same list when the entry brings none. */
export function attachmentsAfter(
  before: readonly KeptAttachment[] | undefined,
  { id, at, author, happening }: Entry,
): readonly KeptAttachment[] | undefined {
  if (happening.kind !== 'attachment-kept') return before;
  return [...(before ?? []), { ...happening.attachment, entry: id, at, author }];
}

/** The hashes of the files that an entry speaks of, whether or not it counts. */
export function filesNamedIn({ happening }: Entry): string[] {
  if (happening.kind === 'attachment-kept') return [happening.attachment.hash];
  return happening.kind === 'bid-noted' && happening.bid.picture !== undefined ? [happening.bid.picture] : [];
}
