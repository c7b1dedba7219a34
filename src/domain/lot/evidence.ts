import * as z from 'zod/mini';

/** Where a field's value came from, and how sure that is. */
export const evidenceSchema = z.strictObject({
  from: z.enum(['typed', 'pasted', 'file', 'structured-data', 'page-text', 'pointed']),
  /** The very text it was read from. */
  text: z.string().check(z.maxLength(400)),
  sure: z.enum(['certain', 'likely', 'doubtful']),
});
export type Evidence = z.infer<typeof evidenceSchema>;
export const evidenceByFieldSchema = z._default(z.record(z.string(), evidenceSchema), {});
