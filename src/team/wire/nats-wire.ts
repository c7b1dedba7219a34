import { DeliverPolicy, DiscardPolicy, jetstream, jetstreamManager, type StreamConfig } from '@nats-io/jetstream';
import { jwtAuthenticator, type NatsConnection, wsconnect } from '@nats-io/nats-core';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { type Instant, instant } from '../../domain/time/instant.ts';
import type { Credentials } from '../access/credentials.ts';
import { inboxOf } from '../message/rights.ts';
import { streamOf, streamSubjects } from '../message/subjects.ts';
import type { TeamId } from '../message/team-id.ts';
import { asked } from './nats-refusal.ts';
import type { Delivered, Wire, WireRefusal } from './wire.ts';

export interface NatsServer {
  /** `wss://…`, or `ws://127.0.0.1:…` on this computer; three for a cluster of three. */
  readonly addresses: readonly string[];
  readonly team: TeamId;
  /** The device, or the invitation of a guest: answers come in under this name. */
  readonly name: string;
  readonly credentials: Credentials;
  /** How long each answer may take, in milliseconds; 5,000 when left out. */
  readonly patience?: number;
}

/** Milliseconds. A pull that asks for more than there is would wait this long; it never asks for more. */
const PULL = 5_000;
/** Connects to the team's server. Nothing is tried again behind one's back: whoever asks is told, and asks again. */
export async function connectToServer(server: NatsServer): Promise<Outcome<Wire, WireRefusal>> {
  const { addresses, name, credentials, patience = 5_000 } = server;
  return asked(async () => {
    const connection = await wsconnect({
      servers: [...addresses],
      authenticator: jwtAuthenticator(credentials.word, new TextEncoder().encode(credentials.seed)),
      inboxPrefix: inboxOf(name),
      reconnect: false,
      timeout: patience,
      ignoreClusterUpdates: true,
    });
    return wireOver(connection, server.team, patience);
  });
}

async function wireOver(connection: NatsConnection, team: TeamId, patience: number): Promise<Wire> {
  const stream = streamOf(team);
  const options = { timeout: patience };
  const manager = await jetstreamManager(connection, { ...options, checkAPI: false });
  const js = jetstream(connection, options);

  async function message(query: { seq: number } | { last_by_subj: string }): Promise<Delivered | null> {
    const stored = await manager.streams.getMessage(stream, query);
    if (stored === null) return null;
    return { subject: stored.subject, place: stored.seq, at: atOf(stored.timestamp), data: stored.string() };
  }

  async function page(place: number, subject: string, most: number): Promise<readonly Delivered[]> {
    const consumer = await js.consumers.get(stream, {
      filter_subjects: subject,
      deliver_policy: DeliverPolicy.StartSequence,
      opt_start_seq: place,
    });
    const wanted = Math.min(most, (await consumer.info()).num_pending);
    const got: Delivered[] = [];
    if (wanted > 0)
      for await (const one of await consumer.fetch({ max_messages: wanted, expires: PULL }))
        got.push({ subject: one.subject, place: one.seq, at: atOf(one.timestamp), data: one.string() });
    await consumer.delete();
    return got;
  }

  return {
    publish: ({ subject, data, after }) =>
      asked(async () => {
        const stored = await js.publish(subject, data, { expect: { lastSubjectSequence: after, streamName: stream } });
        return stored.seq;
      }),
    last: () => asked(async () => (await manager.streams.info(stream)).state.last_seq),
    lastOn: (subject) => asked(() => message({ last_by_subj: subject })),
    at: (place) => asked(() => message({ seq: place })),
    from: (place, subject, most) => asked(() => page(place, subject, most)),
    makeStream: async (servers) => {
      const made = await asked(async () => {
        const { config } = await manager.streams.add(streamPlan(team, servers));
        return config.deny_delete === true && config.deny_purge === true;
      });
      if (!made.ok || made.value) return made.ok ? ok(null) : made;
      return refuse(
        'unprotected',
        'The team’s stream is there, but its messages can be deleted. Set up the server anew.',
      );
    },
    close: () => connection.close(),
  };
}

/** The stream of a team: nothing in it can be deleted or changed, and a full one refuses instead of forgetting. */
const streamPlan = (team: TeamId, servers: number): Partial<StreamConfig> & { readonly name: string } => ({
  name: streamOf(team),
  subjects: [...streamSubjects(team)],
  num_replicas: servers,
  deny_delete: true,
  deny_purge: true,
  discard: DiscardPolicy.New,
  max_age: 0,
});

const atOf = (timestamp: string): Instant => instant(Date.parse(timestamp));
