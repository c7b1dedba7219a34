import { createAccount, createOperator } from '@nats-io/nkeys';
import * as z from 'zod/mini';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { teamIdSchema } from '../message/team-id.ts';
import { readPacked, writePacked } from './packed-text.ts';

const seed = (kind: 'O' | 'A') => z.string().check(z.regex(new RegExp(`^S${kind}[A-Z2-7]{56}$`)));

/**
 * What lets an owner's computer give rights on the team's server and take them back: the keys by which the server believes
 * who is whom (operator and accounts, NATS). They let nobody read what is sealed. `npm run team-server` writes them.
 */
export const serverKeysSchema = z.strictObject({
  team: teamIdSchema,
  addresses: z.array(z.string().check(z.regex(/^wss?:\/\/[^\s/]+$/))).check(z.minLength(1), z.maxLength(3)),
  /** Signs the account. */
  operator: seed('O'),
  /** Signs users of the team. */
  account: seed('A'),
  /** Signs whoever tells the server of a changed account. */
  system: seed('A'),
});
export type ServerKeys = z.infer<typeof serverKeysSchema>;

const START = 'headroom-server';

/** The text with which a team is started. Whoever has it can let in and put out at the server: it is the owner's alone. */
export const writeServerKeys = (keys: ServerKeys): string => writePacked(START, keys);

/** Reads such a text, with or without the spaces and line breaks that a mail put in. */
export function readServerKeys(text: string): Outcome<ServerKeys> {
  const read = readPacked(START, text, serverKeysSchema);
  return read === null
    ? refuse('not-a-start', 'That is not the text of a team’s server. Copy it whole from where the server was set up.')
    : ok(read);
}

/** New keys, for a server that is set up. */
export function newServerSeeds(): Pick<ServerKeys, 'operator' | 'account' | 'system'> {
  const text = (pair: { getSeed(): Uint8Array }): string => new TextDecoder().decode(pair.getSeed());
  return { operator: text(createOperator()), account: text(createAccount()), system: text(createAccount()) };
}
