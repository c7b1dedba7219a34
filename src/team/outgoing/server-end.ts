import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import type { ChainHead } from '../../journal/chain-head.ts';
import type { DeviceId } from '../../journal/ids.ts';
import { readMessage } from '../message/entries-message.ts';
import { type Piece, readPiece } from '../message/piece.ts';
import { subjectOf } from '../message/subjects.ts';
import { type TeamKey, unseal } from '../seal/seal.ts';
import type { Delivered } from '../wire/wire.ts';
import type { Sending } from './send.ts';

/** How far the server has this device's chain, as far as is known. */
export interface Sent {
  /** Of the last entry that it has; 0 for none. */
  readonly sequence: number;
  /** Where its last message of this device stands; 0 for nowhere. */
  readonly place: number;
  /** The last piece that it has of a message that is not there whole; its entries are not counted in `sequence`. */
  readonly piece?: Piece;
}
export const NOTHING_SENT: Sent = { sequence: 0, place: 0 };

/** How far the server has this device's chain, by its last message. */
export async function serverEnd(sending: Sending): Promise<Outcome<Sent, Refusal>> {
  const { chain, wire, team, keys } = sending;
  const device = await chain.device();
  const last = await wire.lastOn(subjectOf(team, device));
  if (!last.ok) return last;
  if (last.value === null) return ok(NOTHING_SENT);
  const { place } = last.value;
  const found = await endIn(last.value, keys);
  if (found === null)
    return refuse(
      'not-ours',
      `The last message of this computer on the server (${place}) can’t be opened. Nothing was sent. Put this computer out of the team and let it join again.`,
    );
  const { head, piece } = found;
  const isOpen = piece !== undefined && piece.number < piece.count;
  // What an unfinished message begins with is known by the chain here: it goes on behind the message before.
  if (isOpen) return openEnd(sending, device, { piece, place });
  const here = await chain.entryAt(device, head.sequence);
  if (here?.hash === head.hash) return ok({ sequence: head.sequence, place });
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

async function openEnd(
  { chain }: Sending,
  device: DeviceId,
  { piece, place }: { readonly piece: Piece; readonly place: number },
): Promise<Outcome<Sent, Refusal>> {
  const here = await chain.entryAt(device, piece.head.sequence);
  if (here !== null && here.hash !== piece.head.hash)
    return refuse('forked', `On the server another entry is number ${piece.head.sequence} of this computer.`);
  return ok({ sequence: piece.after, place, piece });
}

async function endIn(
  { data }: Delivered,
  keys: readonly TeamKey[],
): Promise<{ readonly head: ChainHead; readonly piece?: Piece } | null> {
  const unsealed = await unseal(data, (number) => keys.find((one) => one.number === number)?.key);
  if (!unsealed.ok) return null;
  const piece = readPiece(unsealed.value.text);
  if (piece !== null) return { head: piece.head, piece };
  const message = readMessage(unsealed.value.text);
  return message.ok ? { head: message.value.head } : null;
}
