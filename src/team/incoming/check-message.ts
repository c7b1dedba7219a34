import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
import { type EntriesMessage, readMessage } from '../message/entries-message.ts';
import { readSubject } from '../message/subjects.ts';
import { unseal } from '../seal/seal.ts';
import type { Delivered } from '../wire/wire.ts';
import { checkEntries, type Here } from './check-entries.ts';
import { checkSigner } from './check-signer.ts';
import type { Membership } from './membership.ts';

/** What a message brings. */
export interface Checked {
  readonly device: DeviceId;
  /** Entries that are not here, in the order of their chain; none when the message only repeats what came before. */
  readonly fresh: readonly Envelope[];
  readonly head: SignedHead;
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
  const name = `Message ${delivered.place}`;
  const place = readSubject(delivered.subject);
  if (place === null || place.team !== membership.team)
    return refuse('other-team', `${name} is not of this team. It was left out.`);
  const { device } = place;
  const of = `${name} of device ${device}`;
  const member = membership.members.get(device);
  if (member === undefined) return refuse('stranger', `${of} was left out: nobody let this device into the team.`);
  const message = await opened(delivered, membership);
  if (!message.ok) return refuse(message.reason, `${of} was left out: ${message.message}.`);
  const { value } = message;
  if (value.team !== membership.team || value.device !== device)
    return refuse('moved', `${of} was left out: it was written as device ${value.device} and put into another place.`);
  if (member.ends !== null && value.head.sequence > member.ends)
    return refuse('put-out', `${of} was left out: this device had been put out of the team before.`);
  const entries = await checkEntries(value.entries, device, here);
  if (!entries.ok) return refuse(entries.reason, `${of} was left out. ${entries.message}`);
  const signer = await checkSigner(value, member);
  if (signer !== null) return refuse(signer.reason, `${of} was left out: ${signer.message}.`);
  return ok({ device, fresh: entries.value, head: value.head });
}

async function opened(delivered: Delivered, { keys }: Membership): Promise<Outcome<EntriesMessage, Refusal>> {
  const unsealed = await unseal(delivered.data, (number) => keys.get(number));
  return unsealed.ok ? readMessage(unsealed.value.text) : unsealed;
}
