import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import { keyOfSeed, makeSeed } from '../keys/user-key.ts';
import { answerSubject, joinSubject } from '../message/subjects.ts';
import type { Self, TeamState } from '../roster/team-state.ts';
import { makeBoxKeys, openFor, publicBoxKey } from '../seal/box.ts';
import { importTeamKey, seal } from '../seal/seal.ts';
import type { Wire } from '../wire/wire.ts';
import { type Asking, answerSchema } from './asking.ts';
import { type Invitation, importSecret } from './invitation.ts';

/** A computer that asks to be let in. It is kept, so that asking goes on after the browser was closed. */
export interface PendingJoin {
  readonly invitation: Invitation;
  readonly asking: Asking;
  /** What goes to the server: sealed once, so that asking again is seen to be the same. */
  readonly sealed: string;
  readonly seed: string;
  readonly box: CryptoKeyPair;
}

/** Makes the keys of a computer that was invited. Keep what is returned, then call `join` until it is answered. */
export async function newJoin(
  invitation: Invitation,
  { device, signKey }: Pick<Self, 'device' | 'signKey'>,
): Promise<PendingJoin> {
  const [seed, box] = [makeSeed(), await makeBoxKeys()];
  const asking = { device, signKey, userKey: keyOfSeed(seed).getPublicKey(), boxKey: await publicBoxKey(box) };
  const sealed = await seal(JSON.stringify(asking), { number: 1, key: await importSecret(invitation.secret) });
  return { invitation, asking, sealed, seed, box };
}

/**
 * Asks to be let in, and looks for the answer, over the connection of a guest. Null while no owner's computer has answered:
 * one that is open does so at its next meeting with the server. What is returned is to be kept instead of the asking.
 */
export async function join(pending: PendingJoin, wire: Wire): Promise<Outcome<TeamState | null, Refusal>> {
  const { invitation, sealed, box, seed, asking } = pending;
  const { team, id, addresses, root, role } = invitation;
  const asked = await ask(pending, wire, sealed);
  if (!asked.ok) return asked;
  const found = await wire.lastOn(answerSubject(team, id));
  if (!found.ok) return found;
  if (found.value === null) return ok(null);
  const text = await openFor(box, found.value.data);
  const answer = text === null ? null : answerSchema.safeParse(JSON.parse(text));
  if (answer?.success !== true)
    return refuse('bad-answer', 'The answer on the server is not for this computer. Ask for a new invitation.');
  const { word, keys, server } = answer.data;
  const forOwner = role === 'owner' && server !== undefined;
  return ok({
    team,
    addresses,
    device: asking.device,
    credentials: { seed, word },
    box,
    keys: await Promise.all(keys.map((key) => importTeamKey(key, forOwner))),
    root,
    roster: [],
    owner: forOwner ? { server, invitations: [] } : null,
  });
}

async function ask({ invitation }: PendingJoin, wire: Wire, sealed: string): Promise<Outcome<null, Refusal>> {
  const subject = joinSubject(invitation.team, invitation.id);
  const published = await wire.publish({ subject, data: sealed, after: 0 });
  if (published.ok) return ok(null);
  if (published.reason !== 'not-last') return published;
  const last = await wire.lastOn(subject);
  if (!last.ok) return last;
  return last.value?.data === sealed
    ? ok(null)
    : refuse('used', 'This invitation was used on a different computer. Tell the owner, and ask for a new one.');
}
