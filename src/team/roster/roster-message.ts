import * as z from 'zod/mini';
import { canonicalJson } from '../../journal/canonical-json.ts';
import { hashOfText } from '../../journal/entry-hash.ts';
import { authorSchema, deviceIdSchema, hashSchema } from '../../journal/ids.ts';
import { valueOfLine } from '../../journal/strict-json.ts';
import { bytesOfHex, hexOf } from '../keys/hex.ts';
import { keyOfSeed, verifies } from '../keys/user-key.ts';
import { teamIdSchema } from '../message/team-id.ts';
import { rosterDeviceSchema } from './roster-device.ts';

/** What an owner did, sealed under the team's key: the server learns nothing of who is who. */
export const rosterActSchema = z.discriminatedUnion('act', [
  z.strictObject({ act: z.literal('started'), name: authorSchema, device: rosterDeviceSchema }),
  z.strictObject({ act: z.literal('let-in'), device: rosterDeviceSchema }),
  z.strictObject({
    act: z.literal('put-out'),
    device: deviceIdSchema,
    /** The number of the last entry of its chain that counts: what the owner had of it. */
    ends: z.int().check(z.gte(0)),
    /** The key that holds from here on. */
    key: z.int().check(z.gte(2)),
  }),
]);
export type RosterAct = z.infer<typeof rosterActSchema>;

const unsignedShape = {
  format: z.literal('headroom-roster'),
  version: z.literal(1),
  team: teamIdSchema,
  /** From 1, without a gap. */
  number: z.int().check(z.gte(1)),
  /** The hash of the message before it; '' for the first. */
  before: z.union([z.literal(''), hashSchema]),
  by: deviceIdSchema,
  /** A RosterAct, as a JWE under the team's key. */
  sealed: z.string(),
  /** The newest key, sealed for each device that is still in; only when one was put out. */
  boxes: z.optional(z.array(z.strictObject({ device: deviceIdSchema, box: z.string() }))),
};

/** One message of the roster, signed by an owner's device over all of it. */
export const rosterMessageSchema = z.strictObject({
  ...unsignedShape,
  signature: z.string().check(z.regex(/^[0-9a-f]{128}$/)),
});
export type RosterMessage = z.infer<typeof rosterMessageSchema>;
export type UnsignedRosterMessage = Omit<RosterMessage, 'signature'>;

/** Words of its own first, so that a signature of anything else never passes for one of the roster. */
const signedBytes = (message: UnsignedRosterMessage): Uint8Array =>
  new TextEncoder().encode(`Headroom roster ${canonicalJson(message)}`);

export function writeRosterMessage(message: UnsignedRosterMessage, seed: string): string {
  return canonicalJson({ ...message, signature: hexOf(keyOfSeed(seed).sign(signedBytes(message))) });
}

export function readRosterMessage(text: string): RosterMessage | null {
  const line = valueOfLine(text);
  const read = line.ok ? rosterMessageSchema.safeParse(line.value) : null;
  return read?.success === true ? read.data : null;
}

export function isSignedBy({ signature, ...message }: RosterMessage, userKey: string): boolean {
  return verifies(userKey, signedBytes(message), bytesOfHex(signature));
}

/** By which the next one names it. */
export const rosterHash = (text: string): string => hashOfText(text);
