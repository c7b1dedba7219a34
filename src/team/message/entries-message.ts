import * as z from 'zod/mini';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { deviceIdSchema } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import { firstIssue } from '../../journal/read-entry.ts';
import { type SignedHead, signedHeadSchema } from '../../journal/signed-head.ts';
import { valueOfLine } from '../../journal/strict-json.ts';
import { type Seen, seenSchema } from './seen.ts';
import { type TeamId, teamIdSchema } from './team-id.ts';

const FORMAT = 'headroom-team';
const VERSION = 1;

/**
 * What is sealed: entries of one device in the order of its chain, and the last of them as its end, signed by the device.
 * Team and device stand in it too, so that a message can't be put into another's place by who holds the server.
 */
const messageSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  team: teamIdSchema,
  device: deviceIdSchema,
  /** Read one by one; see read-entry.ts. */
  entries: z.array(z.unknown()).check(z.minLength(1)),
  head: signedHeadSchema,
  /** A signature of the head where the browser has none of its own; see proof.ts. */
  proof: z.optional(z.string().check(z.regex(/^[0-9a-f]{128}$/))),
  /** What the device had of the others then. */
  seen: z.optional(seenSchema),
});
export type EntriesMessage = z.infer<typeof messageSchema>;

const anyMessageSchema = z.looseObject({ format: z.literal(FORMAT), version: z.int() });

export interface ToWrite {
  readonly team: TeamId;
  readonly entries: readonly Envelope[];
  readonly head: SignedHead;
  readonly proof?: string | undefined;
  readonly seen?: Seen | undefined;
}

export function writeMessage({ team, entries, head, proof, seen }: ToWrite): string {
  return JSON.stringify({ format: FORMAT, version: VERSION, team, device: head.device, entries, head, proof, seen });
}

/** A newer Headroom may write messages that this one can't read: they wait for the update. */
export function readMessage(
  text: string,
): Outcome<EntriesMessage, { readonly reason: 'newer' | 'not-a-message'; readonly message: string }> {
  const line = valueOfLine(text);
  if (!line.ok) return refuse('not-a-message', line.message);
  const any = anyMessageSchema.safeParse(line.value);
  if (any.success && any.data.version > VERSION)
    return refuse('newer', 'a newer Headroom wrote it. Update Headroom on this computer');
  const message = messageSchema.safeParse(line.value);
  return message.success ? ok(message.data) : refuse('not-a-message', firstIssue(message.error));
}
