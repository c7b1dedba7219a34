import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import type { Membership } from '../incoming/membership.ts';
import { openFor } from '../seal/box.ts';
import { importTeamKey, type TeamKey, teamKeySchema, unseal } from '../seal/seal.ts';
import { foldRoster, type OpenedRosterMessage, type Roster } from './fold-roster.ts';
import { readRosterMessage, rosterActSchema, rosterHash } from './roster-message.ts';
import type { TeamState } from './team-state.ts';

/** A roster with what is in its messages, and the keys that are known after it. */
export interface OpenRoster {
  readonly roster: Roster;
  readonly opened: readonly OpenedRosterMessage[];
  readonly keys: readonly TeamKey[];
}

/** Opens the messages of a roster in their order, up to the first that can't follow, which is told. */
export async function openRoster(
  state: Pick<TeamState, 'team' | 'root' | 'keys' | 'box' | 'device' | 'owner'>,
  texts: readonly string[],
): Promise<{ readonly open: OpenRoster | null; readonly stopped: Refusal | null }> {
  let keys = state.keys;
  let roster: Roster | null = null;
  const opened: OpenedRosterMessage[] = [];
  const done = () => (roster === null ? null : { roster, opened, keys });
  for (const text of texts) {
    if (roster === null && rosterHash(text) !== state.root)
      return {
        open: null,
        stopped: refuse('other-root', 'The roster on the server is not of the team that was joined.'),
      };
    const one = await openMessage(text, { ...state, keys });
    if (!one.ok) return { open: done(), stopped: one };
    const next = foldRoster(roster, one.value, state.team);
    if (!next.ok) return { open: done(), stopped: next };
    roster = next.value;
    keys = one.value.keys;
    opened.push({ text, message: one.value.message, act: one.value.act });
  }
  return { open: done(), stopped: null };
}

async function openMessage(
  text: string,
  { keys, box, device, owner }: Pick<TeamState, 'keys' | 'box' | 'device' | 'owner'>,
): Promise<Outcome<OpenedRosterMessage & { readonly keys: readonly TeamKey[] }>> {
  const message = readRosterMessage(text);
  if (message === null)
    return refuse('not-a-message', 'The server handed out what is no message of a roster. It was left out.');
  const own = message.boxes?.find((one) => one.device === device);
  const fresh = own === undefined ? null : await keyIn(await openFor(box, own.box), owner !== null);
  const known = fresh === null || keys.some(({ number }) => number === fresh.number) ? keys : [fresh, ...keys];
  const sealed = await unseal(message.sealed, (number) => known.find((one) => one.number === number)?.key);
  const name = `Message ${message.number} of the team’s roster`;
  if (!sealed.ok) return refuse(sealed.reason, `${name} can’t be opened: ${sealed.message}.`);
  const act = rosterActSchema.safeParse(parsed(sealed.value.text));
  if (!act.success) return refuse('newer', `${name} can’t be read. Update Headroom on this computer.`);
  return ok({ text, message, act: act.data, keys: known });
}

async function keyIn(text: string | null, forOwner: boolean): Promise<TeamKey | null> {
  const read = text === null ? null : teamKeySchema.safeParse(parsed(text));
  return read?.success === true ? await importTeamKey(read.data, forOwner) : null;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Who may send what, for whoever checks messages. */
export function membershipOf({ roster, keys }: OpenRoster): Membership {
  return {
    team: roster.team,
    keys: new Map(keys.map(({ number, key }) => [number, key])),
    members: new Map(
      [...roster.members].map(([device, { signKey, userKey, ends }]) => [
        device,
        { publicKey: signKey, userKey, ends },
      ]),
    ),
  };
}
