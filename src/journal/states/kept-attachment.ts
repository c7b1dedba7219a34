import type { Attachment } from '../../domain/sale/attachment.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { EntryId } from '../ids.ts';

/** A file that is kept with a lot, and the entry that says so. */
export interface KeptAttachment extends Attachment {
  readonly entry: EntryId;
  readonly at: Instant;
  readonly author: string;
}
