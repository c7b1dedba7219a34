import * as z from 'zod/mini';
import { instantSchema } from '../domain/time/instant.ts';
import { canonicalJson } from './canonical-json.ts';
import { chainHeadSchema } from './chain-head.ts';
import { deviceIdSchema } from './ids.ts';
import { publicKeySchema } from './signed-head.ts';

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
  /** The key that the team's server knows it by, with which it signs. */
  publicKey: publicKeySchema,
  /** By its own clock. */
  at: instantSchema,
  heads: z.array(chainHeadSchema).check(z.minLength(1), z.maxLength(100)),
  signature: z.string().check(z.regex(/^[0-9a-f]{128}$/)),
});
export type Sighting = z.infer<typeof sightingSchema>;

/** What is signed: words of its own first, so that a signature of anything else never passes for one of these. */
export const sightingText = ({ by, at, heads }: Pick<Sighting, 'by' | 'at' | 'heads'>): string =>
  `Headroom seen ${canonicalJson({ by, at, heads })}`;

/** What an evidence pack says of the chains in it by the word of others. */
export const witnessSchema = z.strictObject({ stored: z.array(storedSchema), sightings: z.array(sightingSchema) });
export type Witness = z.infer<typeof witnessSchema>;
