import * as z from 'zod/mini';
import { attachmentSchema } from '../../domain/sale/attachment.ts';

/** Files that are kept with a lot. */
export const ATTACHMENTS = [
  /** A file was kept. Undoing it takes the file from the lot; its bytes stay, so that the undo can be undone. */
  z.strictObject({ kind: z.literal('attachment-kept'), attachment: attachmentSchema }),
] as const;
