import * as z from 'zod/mini';

/** 26 characters of Crockford base 32 (the ULID layout): 48 bits of time, then a counter and randomness; sorts by time. */
export const entryIdSchema = z
  .string()
  .check(z.regex(/^[0-9A-HJKMNP-TV-Z]{26}$/))
  .brand<'EntryId'>();
export type EntryId = z.infer<typeof entryIdSchema>;

/** 10 characters of Crockford base 32, drawn at random when a browser first opens the store. */
export const deviceIdSchema = z
  .string()
  .check(z.regex(/^[0-9A-HJKMNP-TV-Z]{10}$/))
  .brand<'DeviceId'>();
export type DeviceId = z.infer<typeof deviceIdSchema>;

/** Who wrote an entry, by his own word. */
export const authorSchema = z.string().check(z.minLength(1), z.maxLength(80));

/** SHA-256 in lower-case hexadecimal. */
export const hashSchema = z
  .string()
  .check(z.regex(/^[0-9a-f]{64}$/))
  .brand<'Hash'>();
export type Hash = z.infer<typeof hashSchema>;

/** 16 random bytes in lower-case hexadecimal. */
export const saltSchema = z.string().check(z.regex(/^[0-9a-f]{32}$/));

/** How many rows an entry brought in at once. */
export const rowsSchema = z.int().check(z.gte(2));
