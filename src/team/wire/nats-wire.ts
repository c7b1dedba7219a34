import { DeliverPolicy, JetStreamApiCodes, JetStreamApiError, jetstream, jetstreamManager } from '@nats-io/jetstream';
import { errors, type NatsConnection, nkeyAuthenticator, wsconnect } from '@nats-io/nats-core';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { type Instant, instant } from '../../domain/time/instant.ts';
import type { DeviceId } from '../../journal/ids.ts';
import { inboxOf } from '../message/rights.ts';
import { streamOf } from '../message/subjects.ts';
import type { TeamId } from '../message/team-id.ts';
import type { Delivered, Wire, WireRefusal } from './wire.ts';

export interface NatsServer {
  /** `wss://…`, or `ws://127.0.0.1:…` on this computer; three for a cluster of three. */
  readonly addresses: readonly string[];
  readonly team: TeamId;
  readonly device: DeviceId;
  /** The private half of the key that the server knows this device by. */
  readonly seed: Uint8Array;
  /** How long each answer may take, in milliseconds; 5,000 when left out. */
  readonly patience?: number;
}

/** Milliseconds. A pull that asks for more than there is would wait this long; it never asks for more. */
const PULL = 5_000;
/** What the server says of a message for which it has no room: maximum of messages, bytes, or the disk. */
const NO_ROOM: ReadonlySet<number> = new Set([10023, 10028, 10047, 10077]);
const TOO_LARGE = 10054;

/** Connects to the team's server. Nothing is tried again behind one's back: whoever asks is told, and asks again. */
export async function connectToServer(server: NatsServer): Promise<Outcome<Wire, WireRefusal>> {
  const { addresses, device, seed, patience = 5_000 } = server;
  return asked(async () => {
    const connection = await wsconnect({
      servers: [...addresses],
      authenticator: nkeyAuthenticator(seed),
      inboxPrefix: inboxOf(device),
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
    lastOn: (subject) => asked(() => message({ last_by_subj: subject })),
    at: (place) => asked(() => message({ seq: place })),
    from: (place, subject, most) => asked(() => page(place, subject, most)),
    close: () => connection.close(),
  };
}

const atOf = (timestamp: string): Instant => instant(Date.parse(timestamp));

async function asked<Value>(ask: () => Promise<Value>): Promise<Outcome<Value, WireRefusal>> {
  try {
    return ok(await ask());
  } catch (error) {
    return { ok: false, ...refusalOf(error) };
  }
}

/** Whatever the library throws is about the server or the way to it; a mistake of ours shows in the tests by its message. */
function refusalOf(error: unknown): WireRefusal {
  const says = error instanceof Error ? error.message : String(error);
  const code = error instanceof JetStreamApiError ? error.code : 0;
  if (code === JetStreamApiCodes.StreamWrongLastSequence || code === JetStreamApiCodes.StreamWrongLastSequenceUnknown)
    return refuse('not-last', 'The server has another last message of this computer than this one knows.');
  if (isPermission(error))
    return refuse('not-allowed', 'The team’s server does not let this computer do that. Ask whoever runs the team.');
  if (code === TOO_LARGE || error instanceof errors.InvalidArgumentError)
    return refuse('too-large', `The team’s server takes no message of this size (${says}). Raise its max_payload.`);
  if (NO_ROOM.has(code) || code !== 0)
    return refuse('full', `The team’s server did not store it (${says}). Ask whoever runs it.`);
  return refuse('no-connection', `The team’s server did not answer (${says}). It is tried again by itself.`);
}

function isPermission(error: unknown): boolean {
  if (error instanceof errors.PermissionViolationError || error instanceof errors.AuthorizationError) return true;
  return error instanceof Error && error.cause !== undefined && isPermission(error.cause);
}
