import * as z from 'zod/mini';

/** 16 characters of Crockford base 32, drawn at random when a team is started. */
export const teamIdSchema = z
  .string()
  .check(z.regex(/^[0-9A-HJKMNP-TV-Z]{16}$/))
  .brand<'TeamId'>();
export type TeamId = z.infer<typeof teamIdSchema>;
