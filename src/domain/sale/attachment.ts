import * as z from 'zod/mini';

/** What an attached file shows, in the user's word. */
export const ATTACHMENT_KINDS = [
  'page-picture',
  'photo',
  'condition-report',
  'receipt',
  'invoice',
  'title',
  'message',
  'other',
] as const;

/** A file that belongs to a lot. Its bytes are kept beside the journal under their hash; this is what the journal says of them. */
export const attachmentSchema = z.strictObject({
  /** SHA-256 of the bytes, in lower-case hexadecimal. */
  hash: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
  /** As the file was called. Data, never a path. */
  name: z.string().check(z.minLength(1), z.maxLength(200)),
  /** As the browser stated it, for example `image/png`; says how to show the file, and is not proof of what it is. */
  mediaType: z.string().check(z.maxLength(200)),
  sizeBytes: z.int().check(z.gte(1)),
  about: z.enum(ATTACHMENT_KINDS),
  note: z.optional(z.string().check(z.minLength(1), z.maxLength(2000))),
});
export type Attachment = z.infer<typeof attachmentSchema>;
export type AttachmentKind = Attachment['about'];
