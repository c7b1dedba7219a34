import { attachmentSchema } from '../../domain/sale/attachment.ts';
import { aboutLot } from './row.ts';

/** Files that are kept with a lot. */
export const ATTACHMENTS = [
  /** A file was kept. Undoing it takes the file from the lot; its bytes stay, so that the undo can be undone. */
  aboutLot(
    'attachment-kept',
    { attachment: attachmentSchema },
    {
      fold: ({ attachments = [] }, { attachment }, { entry, notedAt, author }) => ({
        attachments: [...attachments, { ...attachment, entry, at: notedAt, author }],
      }),
      files: ({ attachment: { hash, name } }) => [{ hash, name }],
      undo: 'in history',
      pack: 'sale',
    },
  ),
] as const;
