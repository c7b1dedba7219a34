import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
import type { Sighting, Stored } from '../../journal/witness.ts';
import { publicKeyOf } from '../keys/user-key.ts';
import { readMessage } from '../message/entries-message.ts';
import { isSeenBy } from '../message/seen.ts';
import { readSubject } from '../message/subjects.ts';
import { unseal } from '../seal/seal.ts';
import type { Delivered } from '../wire/wire.ts';
import { checkEntries, type Here } from './check-entries.ts';
import { checkSigner } from './check-signer.ts';
import type { Member, Membership } from './membership.ts';

/** What a message brings. */
export interface Checked {
  readonly device: DeviceId;
  /** Entries that are not here, in the order of their chain; none when the message only repeats what came before. */
  readonly fresh: readonly Envelope[];
  readonly head: SignedHead;
  /** When and where the server stored all of them, by its own word. */
  readonly stored: Stored;
  /** What its device had of the others; null where it does not say. */
  readonly sighting: Sighting | null;
}

/** A message that was opened: its text, and who is to have written it. */
export interface Opened {
  readonly device: DeviceId;
  readonly member: Member;
  readonly text: string;
}

/**
 * Looks at a message that came from the server before anything of it is taken in. Each refusal names the message and the
 * device, and says what is wrong; it costs that message alone. `missing` and `newer` may mend by themselves: ask again.
 */
export async function checkMessage(
  delivered: Delivered,
  membership: Membership,
  here: Here,
): Promise<Outcome<Checked, Refusal>> {
  const opened = await openMessage(delivered, membership);
  return opened.ok ? checkOpened(delivered, opened.value, membership, here) : opened;
}

/** Whose message it is to be, and what is sealed in it. */
export async function openMessage(
  delivered: Delivered,
  { team, members, keys }: Membership,
): Promise<Outcome<Opened, Refusal>> {
  const place = readSubject(delivered.subject);
  if (place === null || place.team !== team)
    return refuse('other-team', `Message ${delivered.place} is not of this team. It was left out.`);
  const { device } = place;
  const of = nameOf(delivered.place, device);
  const member = members.get(device);
  if (member === undefined) return refuse('stranger', `${of} was left out: nobody let this device into the team.`);
  const unsealed = await unseal(delivered.data, (number) => keys.get(number));
  if (!unsealed.ok) return refuse(unsealed.reason, `${of} was left out: ${unsealed.message}.`);
  return ok({ device, member, text: unsealed.value.text });
}

/** What a text says, by whom it was to be written and what is here of him. */
export async function checkOpened(
  delivered: Delivered,
  { device, member, text }: Opened,
  { team }: Membership,
  here: Here,
): Promise<Outcome<Checked, Refusal>> {
  const of = nameOf(delivered.place, device);
  const message = readMessage(text);
  if (!message.ok) return refuse(message.reason, `${of} was left out: ${message.message}.`);
  const { value } = message;
  if (value.team !== team || value.device !== device || value.head.device !== device)
    return refuse('moved', `${of} was left out: it was written as device ${value.device} and put into another place.`);
  if (isAfterEnd(member, value.head.sequence))
    return refuse('put-out', `${of} was left out: this device had been put out of the team before.`);
  const entries = await checkEntries(value.entries, device, here);
  if (!entries.ok) return refuse(entries.reason, `${of} was left out. ${entries.message}`);
  const signer = await checkSigner(value, member);
  if (signer !== null) return refuse(signer.reason, `${of} was left out: ${signer.message}.`);
  const { seen, head } = value;
  const { userKey } = member;
  if (seen !== undefined && !isSeenBy(device, seen, userKey))
    return refuse('bad-sighting', `${of} was left out: it does not sign what it had seen of the others.`);
  const first = head.sequence - value.entries.length + 1;
  return ok({
    device,
    fresh: entries.value,
    head,
    stored: { device, first, last: head.sequence, place: delivered.place, at: delivered.at },
    sighting: seen === undefined ? null : { by: device, publicKey: publicKeyOf(userKey), ...seen },
  });
}

/** What was written behind the last entry that counts, of a device that was put out. */
export const isAfterEnd = ({ ends }: Member, sequence: number): boolean => ends !== null && sequence > ends;

export const nameOf = (place: number, device: DeviceId): string => `Message ${place} of device ${device}`;
