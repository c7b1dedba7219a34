import type { Refusal } from '../../domain/outcome.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
import type { Here } from '../incoming/check-entries.ts';
import { batchesOf, FULL } from '../message/batches.ts';
import { writeMessage } from '../message/entries-message.ts';
import { proofOf } from '../message/proof.ts';
import { signSeen, type UnsignedSeen } from '../message/seen.ts';
import { subjectOf } from '../message/subjects.ts';
import type { TeamId } from '../message/team-id.ts';
import type { TeamKey } from '../seal/seal.ts';
import type { Wire } from '../wire/wire.ts';
import { publishWhole } from './publish-whole.ts';
import { NOTHING_SENT, type Sent, serverEnd } from './server-end.ts';

/** What sending needs of the journal. */
export interface OwnChain extends Here {
  device(): Promise<DeviceId>;
  ownAfter(sequence: number, most: number): Promise<readonly Envelope[]>;
  signedEnd(entry: Envelope): Promise<SignedHead>;
  /** The ends of the others' chains as they are here; null when nothing of them is. */
  othersEnds(): Promise<UnsignedSeen | null>;
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
    const there = await serverEnd(sending);
    if (!there.ok) return { sent, stopped: there };
    const result = await sendAfter(sending, there.value);
    sent = result.sent;
    if (result.stopped?.reason !== 'not-last' || tries === TRIES) return result;
  }
}

async function sendAfter(sending: Sending, there: Sent): Promise<SendResult> {
  const { chain, wire, team, keys } = sending;
  const [key] = keys;
  let sent = there;
  if (key === undefined)
    return { sent, stopped: { reason: 'no-key', message: 'This computer has no key of the team.' } };
  const subject = subjectOf(team, await chain.device());
  let most = FULL;
  for (;;) {
    // One that was begun is ended first, as it was begun.
    const begun = sent.piece === undefined ? null : sent.piece.head.sequence - sent.sequence;
    const entries = await chain.ownAfter(sent.sequence, begun ?? PAGE);
    if (entries.length === 0) return { sent, stopped: null };
    const isEnd = begun === null && entries.length < PAGE;
    const batches = begun === null ? batchesOf(entries) : [entries];
    for (const [i, batch] of batches.entries()) {
      const last = batch.at(-1);
      if (last === undefined) continue;
      const head = await chain.signedEnd(last);
      const texts = await messageTexts(sending, batch, { head, withSeen: isEnd && i === batches.length - 1 });
      const published = await publishWhole({ wire, key, subject, most }, { team, head, ...texts }, sent);
      sent = published.sent;
      most = published.most;
      if (published.stopped !== null) return { sent, stopped: published.stopped };
    }
  }
}

/** Of many messages only the last says what was seen: it stands for all before it. */
async function messageTexts(
  { team, chain, seed }: Sending,
  entries: readonly Envelope[],
  { head, withSeen }: { readonly head: SignedHead; readonly withSeen: boolean },
): Promise<{ readonly text: string; readonly bare: string }> {
  const message = { team, entries, head, proof: head.signed === undefined ? proofOf(head, seed) : undefined };
  const bare = writeMessage(message);
  const seen = withSeen ? await chain.othersEnds() : null;
  if (seen === null) return { text: bare, bare };
  return { text: writeMessage({ ...message, seen: signSeen(head.device, seen, seed) }), bare };
}
