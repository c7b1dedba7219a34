import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
import type { Here } from '../incoming/check-entries.ts';
import { batchesOf } from '../message/batches.ts';
import { readMessage, writeMessage } from '../message/entries-message.ts';
import { proofOf } from '../message/proof.ts';
import { subjectOf } from '../message/subjects.ts';
import type { TeamId } from '../message/team-id.ts';
import { seal, type TeamKey, unseal } from '../seal/seal.ts';
import type { Delivered, Wire } from '../wire/wire.ts';

/** How far the server has this device's chain, as far as is known. */
export interface Sent {
  /** Of the last entry that it has; 0 for none. */
  readonly sequence: number;
  /** Where its last message of this device stands; 0 for nowhere. */
  readonly place: number;
}
export const NOTHING_SENT: Sent = { sequence: 0, place: 0 };

/** What sending needs of the journal. */
export interface OwnChain extends Here {
  device(): Promise<DeviceId>;
  ownAfter(sequence: number, most: number): Promise<readonly Envelope[]>;
  signedEnd(entry: Envelope): Promise<SignedHead>;
}

export interface Sending {
  readonly chain: OwnChain;
  readonly wire: Wire;
  readonly team: TeamId;
  /** The newest first. */
  readonly keys: readonly TeamKey[];
  /** The private half of the key that the server knows this device by: it signs where the browser can't. */
  readonly seed: string;
}

/** How far it came, whether or not it came to the end. */
export interface SendResult {
  readonly sent: Sent;
  /** Why the rest was not sent; null when all was. */
  readonly stopped: Refusal | null;
}

/** Entries read at once. */
const PAGE = 500;
/** How often the server may say that the chain stands elsewhere before it is left for the next time. */
const TRIES = 3;

/** Sends what the server does not have of this device's own chain, in its order. What was sent is never sent again. */
export async function send(sending: Sending): Promise<SendResult> {
  let sent = NOTHING_SENT;
  for (let tries = 1; ; tries++) {
    // Asked each time: the server may have been restored from an older copy, or have stored what nobody told us of.
    const there = await whatIsThere(sending);
    if (!there.ok) return { sent, stopped: there };
    const result = await sendAfter(sending, there.value);
    sent = result.sent;
    if (result.stopped?.reason !== 'not-last' || tries === TRIES) return result;
  }
}

async function sendAfter({ chain, wire, team, keys, seed }: Sending, there: Sent): Promise<SendResult> {
  const [key] = keys;
  let sent = there;
  if (key === undefined)
    return { sent, stopped: { reason: 'no-key', message: 'This computer has no key of the team.' } };
  const subject = subjectOf(team, await chain.device());
  for (;;) {
    const entries = await chain.ownAfter(sent.sequence, PAGE);
    if (entries.length === 0) return { sent, stopped: null };
    for (const batch of batchesOf(entries)) {
      const last = batch.at(-1);
      if (last === undefined) continue;
      const head = await chain.signedEnd(last);
      const data = await seal(
        writeMessage(team, batch, head, head.signed === undefined ? proofOf(head, seed) : undefined),
        key,
      );
      const published = await wire.publish({ subject, data, after: sent.place });
      if (!published.ok) return { sent, stopped: published };
      sent = { sequence: head.sequence, place: published.value };
    }
  }
}

/** How far the server has this device's chain, by its last message. */
async function whatIsThere({ chain, wire, team, keys }: Sending): Promise<Outcome<Sent, Refusal>> {
  const device = await chain.device();
  const last = await wire.lastOn(subjectOf(team, device));
  if (!last.ok) return last;
  if (last.value === null) return ok(NOTHING_SENT);
  const head = await endIn(last.value, keys);
  if (head === null)
    return refuse(
      'not-ours',
      `The last message of this computer on the server (${last.value.place}) can’t be opened. Nothing was sent. Put this computer out of the team and let it join again.`,
    );
  const here = await chain.entryAt(device, head.sequence);
  if (here?.hash === head.hash) return ok({ sequence: head.sequence, place: last.value.place });
  return here === null
    ? refuse(
        'behind',
        'The server has entries of this computer that are not here. They are fetched before anything is sent.',
      )
    : refuse(
        'forked',
        `On the server another entry is number ${head.sequence} of this computer, as when a browser profile was copied and both copies were used. Nothing was sent. Put this computer out of the team and let it join again.`,
      );
}

async function endIn({ data }: Delivered, keys: readonly TeamKey[]): Promise<SignedHead | null> {
  const unsealed = await unseal(data, (number) => keys.find((one) => one.number === number)?.key);
  const message = unsealed.ok ? readMessage(unsealed.value.text) : unsealed;
  return message.ok ? message.value.head : null;
}
