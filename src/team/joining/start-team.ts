import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import { grant } from '../access/credentials.ts';
import type { ServerKeys } from '../access/server-keys.ts';
import { keyOfSeed, makeSeed } from '../keys/user-key.ts';
import { ownerRights } from '../message/rights.ts';
import { rosterSubject } from '../message/subjects.ts';
import { rosterHash } from '../roster/roster-message.ts';
import type { Self, TeamState } from '../roster/team-state.ts';
import { signedAct } from '../roster/write-roster.ts';
import { makeBoxKeys, publicBoxKey } from '../seal/box.ts';
import { makeTeamKey } from '../seal/seal.ts';
import type { Wire } from '../wire/wire.ts';

/**
 * A team with this computer as its owner, before anybody knows of it. Keep what is returned, then call `startTeam`, as often
 * as it takes.
 * @param name what the dealership calls itself, for whoever is invited
 */
export async function newTeam(server: ServerKeys, name: string, self: Self): Promise<TeamState> {
  const { team, addresses } = server;
  const { device } = self;
  const seed = makeSeed();
  const userKey = keyOfSeed(seed).getPublicKey();
  const word = await grant(server, { userKey, name: device, rights: ownerRights(team, device), until: null });
  const [key, box] = [await makeTeamKey(1), await makeBoxKeys()];
  const signing = { team, device, credentials: { seed, word }, keys: [key] };
  const owner = { ...self, role: 'owner' as const, userKey, boxKey: await publicBoxKey(box) };
  const first = await signedAct(signing, null, { act: 'started', name, device: owner });
  return { ...signing, addresses, box, root: rosterHash(first), roster: [first], owner: { server, invitations: [] } };
}

/** Makes the team's stream on the server and tells it of the team; again, where an answer was lost, does no harm. */
export async function startTeam({ team, addresses, roster }: TeamState, wire: Wire): Promise<Outcome<null, Refusal>> {
  const made = await wire.makeStream(addresses.length);
  if (!made.ok) return made;
  const [data = ''] = roster;
  const published = await wire.publish({ subject: rosterSubject(team), data, after: 0 });
  if (published.ok) return ok(null);
  if (published.reason !== 'not-last') return published;
  const [first] = await firstOn(wire, rosterSubject(team));
  return first === data
    ? ok(null)
    : refuse('started-before', 'A team was started on this server before. Ask its owner for an invitation.');
}

async function firstOn(wire: Wire, subject: string): Promise<readonly string[]> {
  const found = await wire.from(1, subject, 1);
  return found.ok ? found.value.map(({ data }) => data) : [];
}
