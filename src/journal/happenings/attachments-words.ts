import type { AttachmentKind } from '../../domain/sale/attachment.ts';
import type { ATTACHMENTS } from './attachments.ts';
import type { WordsFor } from './row.ts';

/** What an attached file is called. */
export const ATTACHMENT_WORDS: Readonly<Record<AttachmentKind, string>> = {
  'page-picture': 'Picture of the page',
  photo: 'Photo',
  'condition-report': 'Condition report',
  receipt: 'Receipt',
  invoice: 'Invoice',
  title: 'Title',
  message: 'Message',
  other: 'File',
};

export const ATTACHMENTS_WORDS: WordsFor<typeof ATTACHMENTS> = {
  'attachment-kept': ({ attachment: { about, name, note } }) =>
    [`${ATTACHMENT_WORDS[about]} saved: ${name}`, note].filter(Boolean).join('. '),
};
