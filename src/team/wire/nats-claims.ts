import { decode, encodeUser } from '@nats-io/jwt';
import { jwtAuthenticator, wsconnect } from '@nats-io/nats-core';
import * as z from 'zod/mini';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { ServerKeys } from '../access/server-keys.ts';
import { keyOfSeed, makeSeed } from '../keys/user-key.ts';
import { asked } from './nats-refusal.ts';
import type { ClaimsWire, WireRefusal } from './wire.ts';

const accountSchema = z.object({ nats: z.object({ revocations: z.optional(z.record(z.string(), z.number())) }) });
const answerSchema = z.object({ data: z.optional(z.object({ code: z.number() })) });
const UPDATE = '$SYS.REQ.CLAIMS.UPDATE';

/** Connects to the server's own account, which takes the operator's word for who is let in. */
export async function connectToClaims(
  { addresses, system }: ServerKeys,
  patience = 5_000,
): Promise<Outcome<ClaimsWire, WireRefusal>> {
  return asked(async () => {
    const seed = makeSeed();
    // Good for a minute: it is made for this one connection.
    const soon = Math.floor(Date.now() / 1000) + 60;
    const word = await encodeUser('owner', keyOfSeed(seed), keyOfSeed(system), {}, { exp: soon });
    const connection = await wsconnect({
      servers: [...addresses],
      authenticator: jwtAuthenticator(word, new TextEncoder().encode(seed)),
      reconnect: false,
      timeout: patience,
      ignoreClusterUpdates: true,
    });
    const request = (subject: string, text = '') => connection.request(subject, text, { timeout: patience });
    return {
      revoked: (account) =>
        asked(async () => {
          const word = (await request(`$SYS.REQ.ACCOUNT.${account}.CLAIMS.LOOKUP`)).string();
          const claims = accountSchema.safeParse(word === '' ? null : decode(word));
          return claims.success ? Object.keys(claims.data.nats.revocations ?? {}) : [];
        }),
      tell: async (word) => {
        const told = await asked(async () => answerSchema.parse((await request(UPDATE, word)).json()).data?.code);
        if (!told.ok || told.value === 200) return told.ok ? ok(null) : told;
        return refuse('not-allowed', 'The team’s server does not take this computer’s word. Set up its rights anew.');
      },
      close: () => connection.close(),
    };
  });
}
