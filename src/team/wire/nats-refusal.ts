import { JetStreamApiCodes, JetStreamApiError } from '@nats-io/jetstream';
import { errors } from '@nats-io/nats-core';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { WireRefusal } from './wire.ts';

/** What the server says of a message for which it has no room: maximum of messages, bytes, or the disk. */
const NO_ROOM: ReadonlySet<number> = new Set([10023, 10028, 10047, 10077]);
const TOO_LARGE = 10054;

/** Asks the server; whatever is thrown becomes a refusal. */
export async function asked<Value>(ask: () => Promise<Value>): Promise<Outcome<Value, WireRefusal>> {
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
