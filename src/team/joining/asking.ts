import * as z from 'zod/mini';
import { serverKeysSchema } from '../access/server-keys.ts';
import { rosterDeviceSchema } from '../roster/roster-device.ts';
import { teamKeySchema } from '../seal/seal.ts';

const { device, userKey, signKey, boxKey } = rosterDeviceSchema.shape;

/** What a guest says of itself, sealed with the secret of its invitation. Name and role are what it was invited as. */
export const askingSchema = z.strictObject({ device, userKey, signKey, boxKey });
export type Asking = z.infer<typeof askingSchema>;

/** What it is answered, sealed for its own key. */
export const answerSchema = z.strictObject({
  /** The account's word for its key. */
  word: z.string(),
  /** Every key that the team had, the newest first: the journal is read from its beginning. */
  keys: z.array(teamKeySchema).check(z.minLength(1)),
  /** Only for a computer that was invited as an owner's. */
  server: z.optional(serverKeysSchema),
});
