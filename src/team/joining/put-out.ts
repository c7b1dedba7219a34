import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import type { DeviceId } from '../../journal/ids.ts';
import { accountWord } from '../access/account.ts';
import { keyOfSeed } from '../keys/user-key.ts';
import { keysPutOut } from '../roster/fold-roster.ts';
import { openRoster } from '../roster/open-roster.ts';
import type { TeamState } from '../roster/team-state.ts';
import { addToRoster, boxesFor, signedAct } from '../roster/write-roster.ts';
import { makeTeamKey } from '../seal/seal.ts';
import type { ClaimsWire, Wire } from '../wire/wire.ts';

/**
 * Puts a device out of the team: what it writes from here on counts for nobody, and a new key holds, which it does not get.
 * `keepRights` then shuts it out at the server too.
 * @param ends the number of the last entry of its chain that is here; later ones won't count
 */
export async function putOut(
  state: TeamState,
  wire: Wire,
  device: DeviceId,
  ends: number,
): Promise<Outcome<TeamState, Refusal>> {
  const { open } = await openRoster(state, state.roster);
  const member = open?.roster.members.get(device);
  if (state.owner === null || open === null)
    return refuse('not-owner', 'Only an owner’s computer can put another out of the team.');
  if (member === undefined || member.ends !== null)
    return refuse('no-such-device', `Device ${device} is not in the team.`);
  if (member.role === 'owner')
    return refuse(
      'owner',
      'An owner’s computer holds the keys of the server, so putting it out would keep nobody out. Set up a new server and start a new team there.',
    );
  const key = await makeTeamKey(open.roster.key + 1);
  const act = { act: 'put-out' as const, device, ends, key: key.number };
  const boxes = await boxesFor(open.roster, device, key);
  return addToRoster(state, wire, await signedAct({ ...state, keys: [key, ...state.keys] }, open.roster, act, boxes));
}

/**
 * Sees to it that the server lets in nobody who was put out: also after it was restored from an older copy, and where the
 * connection broke between the two halves of putting out. It disconnects them at once.
 */
export async function keepRights(state: TeamState, claims: ClaimsWire): Promise<Outcome<'kept' | 'told', Refusal>> {
  const { open } = await openRoster(state, state.roster);
  if (state.owner === null || open === null) return refuse('not-owner', 'Only an owner’s computer has rights to give.');
  const { server } = state.owner;
  const out = keysPutOut(open.opened);
  const there = await claims.revoked(keyOfSeed(server.account).getPublicKey());
  if (!there.ok) return there;
  if (out.every((key) => there.value.includes(key))) return ok('kept');
  const told = await claims.tell(await accountWord(server, out));
  return told.ok ? ok('told') : told;
}
