import { Algorithms, encodeUser } from '@nats-io/jwt';
import type { Instant } from '../../domain/time/instant.ts';
import { keyOfSeed } from '../keys/user-key.ts';
import type { Rights } from '../message/rights.ts';
import type { ServerKeys } from './server-keys.ts';

/** What a device shows the server: its own key, and the account's word for what that key may do. */
export interface Credentials {
  /** The private half of the key (an NKey's seed, base 32); it never leaves the computer, but for an invitation's. */
  readonly seed: string;
  /** The account's word, a JWT. Of no use without the seed. */
  readonly word: string;
}

export interface Grant {
  /** The key's public half (`U…`). */
  readonly userKey: string;
  readonly name: string;
  readonly rights: Rights;
  /** When it ends by itself; null for never. */
  readonly until: Instant | null;
}

/** The account's word for a key: the server asks nobody else who that is. */
export function grant(
  { account }: Pick<ServerKeys, 'account'>,
  { userKey, name, rights, until }: Grant,
): Promise<string> {
  return encodeUser(
    name,
    // Only the public half is known of another's key, and only that is written.
    userKey,
    keyOfSeed(account),
    { pub: { allow: [...rights.publish] }, sub: { allow: [...rights.subscribe] }, subs: -1, data: -1, payload: -1 },
    { algorithm: Algorithms.v2, ...(until !== null && { exp: Math.floor(until / 1000) }) },
  );
}
