import { existsSync, readFileSync } from 'node:fs';
import { jetstreamManager } from '@nats-io/jetstream';
import { wsconnect } from '@nats-io/nats-core';
import { Agent, WebSocket } from 'undici';
import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import { streamOf } from '../../src/team/message/subjects.ts';
import type { Certificate } from './certificate.ts';
import { streamPlan } from './server-conf.ts';
import { addressesOf, KEEPER } from './server-files.ts';
import type { TeamFile } from './team-folder.ts';

/**
 * Makes the team's stream on servers that run, or finds it there with the settings that protect it. The `wsFactory` is for
 * Node, which has no WebSocket before 22, and does not know an authority of one's own.
 */
export async function makeStream(team: TeamFile, tls: Certificate | null): Promise<Outcome<'made' | 'there'>> {
  const servers = addressesOf(team);
  const authority = tls?.authority ?? null;
  const ca = authority !== null && existsSync(authority) ? readFileSync(authority, 'utf8') : undefined;
  const dispatcher = new Agent(ca === undefined ? {} : { connect: { ca } });
  try {
    const connection = await wsconnect({
      servers: [...servers],
      user: KEEPER,
      pass: team.keeperPassword,
      reconnect: false,
      timeout: 5_000,
      wsFactory: async (url) => ({
        socket: new WebSocket(url, { dispatcher }) as unknown as globalThis.WebSocket,
        encrypted: url.startsWith('wss:'),
      }),
    });
    const { streams } = await jetstreamManager(connection);
    const plan = streamPlan(team.team, servers.length);
    const names = await streams.names().next();
    const isThere = names.includes(streamOf(team.team));
    const { config } = isThere ? await streams.info(streamOf(team.team)) : await streams.add(plan);
    await connection.close();
    if (config.deny_delete === true && config.deny_purge === true) return ok(isThere ? 'there' : 'made');
    return refuse(
      'unprotected',
      'The stream is there, but its messages can be deleted. Stop the server, empty its folder of messages and start again.',
    );
  } catch (error) {
    const says = error instanceof Error ? error.message : String(error);
    return refuse(
      'no-server',
      `No server answered at ${servers.join(', ')} (${says}). Start it first, then run this again.`,
    );
  } finally {
    await dispatcher.close();
  }
}
