import * as z from 'zod/mini';
import { instantSchema } from '../domain/time/instant.ts';
import { chainHeadSchema } from './chain-head.ts';
import { deviceIdSchema } from './ids.ts';

/**
 * When the server of a team stored entries of a device, and in which order among all messages, as it told this browser. It
 * stands beside the entries and never in them: no hash covers it, and a server may lie.
 */
export const storedSchema = z.strictObject({
  device: deviceIdSchema,
  /** The entries of one message, by their numbers. */
  first: z.int().check(z.gte(1)),
  last: z.int().check(z.gte(1)),
  /** Its place among all messages of the team, from 1. */
  place: z.int().check(z.gte(1)),
  /** By the server's clock. */
  at: instantSchema,
});
export type Stored = z.infer<typeof storedSchema>;

/** The ends of the others' chains as a device of the team had them, signed by it. */
export const sightingSchema = z.strictObject({
  by: deviceIdSchema,
  /** The key that it signs with, as the team's roster names it (NKey, `U…`). */
  userKey: z.string().check(z.regex(/^U[A-Z2-7]{55}$/)),
  /** By its own clock. */
  at: instantSchema,
  heads: z.array(chainHeadSchema).check(z.minLength(1), z.maxLength(100)),
  signature: z.string().check(z.regex(/^[0-9a-f]{128}$/)),
});
export type Sighting = z.infer<typeof sightingSchema>;
