import { base64url } from 'jose';
import * as z from 'zod/mini';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { type Instant, instantSchema } from '../../domain/time/instant.ts';
import { sayTime } from '../../domain/time/say-time.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { authorSchema, hashSchema } from '../../journal/ids.ts';
import { readPacked, writePacked } from '../access/packed-text.ts';
import { teamIdSchema } from '../message/team-id.ts';
import { roleSchema } from '../roster/roster-device.ts';

/** 16 characters of Crockford base 32. */
export const invitationIdSchema = z.string().check(z.regex(/^[0-9A-HJKMNP-TV-Z]{16}$/));

/**
 * All that a computer needs to ask to be let in. Whoever has it can ask, once, until its time; nothing in it opens what the
 * team has sealed. The server never sees it.
 */
export const invitationSchema = z.strictObject({
  team: teamIdSchema,
  /** What the dealership calls itself. */
  dealership: authorSchema,
  addresses: z.array(z.string()).check(z.minLength(1), z.maxLength(3)),
  id: invitationIdSchema,
  /** Whom it is for. */
  name: authorSchema,
  role: roleSchema,
  until: instantSchema,
  /** With which the server lets the guest ask: a key, and the account's word for it, which ends with the invitation. */
  seed: z.string(),
  word: z.string(),
  /** 32 bytes in base64url: seals what the guest says of itself. */
  secret: z.string().check(z.regex(/^[A-Za-z0-9_-]{43}$/)),
  /** The hash of the first message of the team's roster: the guest knows by it whom to believe. */
  root: hashSchema,
});
export type Invitation = z.infer<typeof invitationSchema>;

const START = 'headroom-invitation';
const SECRET = { name: 'AES-GCM', length: 256 } as const;

export const writeInvitation = (invitation: Invitation): string => writePacked(START, invitation);

/** Reads an invitation, whatever spaces and line breaks a mail put in; refused when it is none, not whole, or too old. */
export function readInvitation(text: string, now: Instant, zone: Zone): Outcome<Invitation> {
  const read = readPacked(START, text, invitationSchema);
  if (read === null)
    return refuse(
      'not-an-invitation',
      'That is not a whole invitation. Copy all of it, from its first letter to its last.',
    );
  if (now > read.until)
    return refuse('too-late', `This invitation was good until ${sayTime(read.until, zone, now)}. Ask for a new one.`);
  return ok(read);
}

export const importSecret = (secret: string): Promise<CryptoKey> =>
  crypto.subtle.importKey('raw', new Uint8Array(base64url.decode(secret)), SECRET.name, false, ['encrypt', 'decrypt']);
