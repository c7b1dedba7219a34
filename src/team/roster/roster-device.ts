import * as z from 'zod/mini';
import { authorSchema, deviceIdSchema } from '../../journal/ids.ts';
import { publicKeySchema } from '../../journal/signed-head.ts';
import { boxKeySchema } from '../seal/box.ts';

/** What a person does in the team. An owner's computer also lets in and puts out; the others differ in words alone. */
export const roleSchema = z.enum(['owner', 'manager', 'buyer', 'bookkeeper']);
export type Role = z.infer<typeof roleSchema>;

/** What the team knows of a device: whose it is, and the public half of each of its keys. */
export const rosterDeviceSchema = z.strictObject({
  device: deviceIdSchema,
  name: authorSchema,
  role: roleSchema,
  /** By which the server knows it, and with which an owner signs the roster (NKey, `U…`). */
  userKey: z.string().check(z.regex(/^U[A-Z2-7]{55}$/)),
  /** With which it signs the end of its chain; null where its browser can't. */
  signKey: z.nullable(publicKeySchema),
  /** For which a team key is sealed (ECDH on P-256). */
  boxKey: boxKeySchema,
});
export type RosterDevice = z.infer<typeof rosterDeviceSchema>;
