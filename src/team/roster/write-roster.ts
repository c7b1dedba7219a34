import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import { rosterSubject } from '../message/subjects.ts';
import { sealFor } from '../seal/box.ts';
import { seal, type TeamKey, writeTeamKey } from '../seal/seal.ts';
import type { Wire } from '../wire/wire.ts';
import type { Roster } from './fold-roster.ts';
import { openRoster } from './open-roster.ts';
import { type RosterAct, type UnsignedRosterMessage, writeRosterMessage } from './roster-message.ts';
import type { TeamState } from './team-state.ts';

type Signing = Pick<TeamState, 'team' | 'device' | 'credentials' | 'keys'>;

/** The next message of a roster, sealed and signed by this device. */
export async function signedAct(
  { team, device, credentials, keys }: Signing,
  after: Roster | null,
  act: RosterAct,
  boxes?: UnsignedRosterMessage['boxes'],
): Promise<string> {
  const [key] = keys;
  if (key === undefined) throw new Error('an owner has a key');
  const message: UnsignedRosterMessage = {
    format: 'headroom-roster',
    version: 1,
    team,
    number: (after?.number ?? 0) + 1,
    before: (after?.hash ?? '') as UnsignedRosterMessage['before'],
    by: device,
    sealed: await seal(JSON.stringify(act), key),
    ...(boxes !== undefined && { boxes }),
  };
  return writeRosterMessage(message, credentials.seed);
}

/** A new key, sealed for every device that stays, this one among them. */
export async function boxesFor(roster: Roster, without: string, key: TeamKey): Promise<UnsignedRosterMessage['boxes']> {
  const text = JSON.stringify(await writeTeamKey(key));
  const stay = [...roster.members.values()].filter(({ ends, device }) => ends === null && device !== without);
  return await Promise.all(stay.map(async ({ device, boxKey }) => ({ device, box: await sealFor(boxKey, text) })));
}

/**
 * Puts a message behind the last of the roster on the server, and takes it into what is kept. Another owner may have been
 * faster: then the roster is to be read again first.
 */
export async function addToRoster(state: TeamState, wire: Wire, text: string): Promise<Outcome<TeamState, Refusal>> {
  const subject = rosterSubject(state.team);
  const last = await wire.lastOn(subject);
  if (!last.ok) return last;
  if (last.value?.data !== state.roster.at(-1))
    return refuse('roster-moved', 'The team changed meanwhile. It is fetched; then try again.');
  const published = await wire.publish({ subject, data: text, after: last.value?.place ?? 0 });
  if (!published.ok) return published;
  const roster = [...state.roster, text];
  const { open } = await openRoster(state, roster);
  return ok({ ...state, roster, keys: open?.keys ?? state.keys });
}
