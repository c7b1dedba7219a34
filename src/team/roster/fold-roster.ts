import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { TeamId } from '../message/team-id.ts';
import type { RosterDevice } from './roster-device.ts';
import { isSignedBy, type RosterAct, type RosterMessage, rosterHash } from './roster-message.ts';

/** A device that is or was in the team. */
export interface RosterMember extends RosterDevice {
  /** The number of the last entry of its chain that counts; null while it is in the team. */
  readonly ends: number | null;
}

/** Who is in a team, after so many messages of its roster. */
export interface Roster {
  readonly team: TeamId;
  /** What the dealership calls itself. */
  readonly name: string;
  /** Of the last message, and its hash. */
  readonly number: number;
  readonly hash: string;
  /** Of the key that holds now. */
  readonly key: number;
  readonly members: ReadonlyMap<DeviceId, RosterMember>;
}

/** A message with what was sealed in it. */
export interface OpenedRosterMessage {
  readonly text: string;
  readonly message: RosterMessage;
  readonly act: RosterAct;
}

/**
 * The roster after one more message. Whatever the server hands out, only what an owner signed, at its place behind what
 * came before, changes who is in the team.
 */
export function foldRoster(
  before: Roster | null,
  opened: OpenedRosterMessage,
  team: TeamId,
): Outcome<Roster, { reason: 'other-team' | 'not-next' | 'not-owner' | 'altered' | 'bad-act'; message: string }> {
  const { message, act, text } = opened;
  const name = `Message ${message.number} of the team’s roster`;
  if (message.team !== team) return refuse('other-team', `${name} is of another team. It was left out.`);
  if (message.number !== (before?.number ?? 0) + 1 || message.before !== (before?.hash ?? ''))
    return refuse(
      'not-next',
      `${name} does not follow what is known of it: the server held one back, or put in another.`,
    );
  const signer = before === null ? (act.act === 'started' ? act.device : undefined) : before.members.get(message.by);
  if (signer === undefined || signer.device !== message.by || signer.role !== 'owner' || isOut(signer))
    return refuse('not-owner', `${name} was left out: device ${message.by} is no owner of the team.`);
  if (!isSignedBy(message, signer.userKey))
    return refuse('altered', `${name} was left out: its signature does not fit.`);
  const next = { team, number: message.number, hash: rosterHash(text) };
  if (before === null)
    return act.act === 'started'
      ? ok({ ...next, name: act.name, key: 1, members: new Map([[act.device.device, { ...act.device, ends: null }]]) })
      : refuse('bad-act', `${name} does not start the team. It was left out.`);
  const members = changedMembers(before, act);
  if (members === null) return refuse('bad-act', `${name} can’t be: it was left out.`);
  return ok({ ...before, ...next, key: act.act === 'put-out' ? act.key : before.key, members });
}

function changedMembers({ members, key }: Roster, act: RosterAct): ReadonlyMap<DeviceId, RosterMember> | null {
  if (act.act === 'started') return null;
  if (act.act === 'let-in') {
    // Who was put out may be let in again, with keys of its own.
    const known = members.get(act.device.device);
    if (known !== undefined && known.ends === null) return null;
    return new Map([...members, [act.device.device, { ...act.device, ends: null }]]);
  }
  const member = members.get(act.device);
  if (member === undefined || member.ends !== null || act.key !== key + 1) return null;
  return new Map([...members, [act.device, { ...member, ends: act.ends }]]);
}

const isOut = (member: RosterDevice | RosterMember): boolean => 'ends' in member && member.ends !== null;

/** The keys of the server's that hold no more: of who was put out and did not come back with it. */
export function keysPutOut(acts: readonly OpenedRosterMessage[]): readonly string[] {
  const keyOf = new Map<DeviceId, string>();
  const out: string[] = [];
  for (const { act } of acts)
    if (act.act !== 'put-out') keyOf.set(act.device.device, act.device.userKey);
    else out.push(keyOf.get(act.device) ?? '');
  return out.filter((key) => key !== '');
}
