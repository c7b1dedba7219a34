import { type Outcome, ok, type Refusal } from '../../domain/outcome.ts';
import { grant } from '../access/credentials.ts';
import { ownerRights, rightsOf } from '../message/rights.ts';
import { answerSubject, joinSubject } from '../message/subjects.ts';
import { type OpenRoster, openRoster } from '../roster/open-roster.ts';
import type { RosterDevice } from '../roster/roster-device.ts';
import type { OpenInvitation, OwnerState, TeamState } from '../roster/team-state.ts';
import { addToRoster, signedAct } from '../roster/write-roster.ts';
import { sealFor } from '../seal/box.ts';
import { unseal, writeTeamKey } from '../seal/seal.ts';
import type { Wire } from '../wire/wire.ts';
import { type Asking, askingSchema } from './asking.ts';
import { withoutInvitation } from './invite.ts';

/** What is to be kept, and who came in. */
export interface Answered {
  readonly state: TeamState;
  readonly letIn: readonly RosterDevice[];
  readonly told: readonly string[];
}

/**
 * On an owner's computer: lets in whoever used an invitation in its time, by the server's clock, the first who did; and
 * forgets invitations whose time is over. Nothing is lost when it is broken off: the next time it goes on.
 */
export async function answerGuests(before: TeamState, wire: Wire): Promise<Outcome<Answered, Refusal>> {
  let state = before;
  const [letIn, told]: [RosterDevice[], string[]] = [[], []];
  for (const invitation of before.owner?.invitations ?? []) {
    const { owner } = state;
    if (owner === null) break;
    const found = await wire.from(1, joinSubject(state.team, invitation.id), 1);
    if (!found.ok) return found;
    const [asked] = found.value;
    if (asked === undefined) continue;
    const asking = asked.at > invitation.until ? null : await askingIn(asked.data, invitation);
    if (asking === null)
      told.push(`The invitation of ${invitation.name} was used too late, or by somebody else. Nobody was let in.`);
    else {
      const device: RosterDevice = { ...asking, name: invitation.name, role: invitation.role };
      const done = await letInDevice({ ...state, owner }, wire, device);
      if (!done.ok) return done;
      state = done.value;
      const answered = await answer({ ...state, owner }, wire, invitation.id, device);
      if (!answered.ok) return answered;
      letIn.push(device);
    }
    state = withoutInvitation({ ...state, owner }, invitation.id);
  }
  return ok({ state, letIn, told });
}

async function askingIn(sealed: string, { secret }: OpenInvitation): Promise<Asking | null> {
  const opened = await unseal(sealed, () => secret);
  if (!opened.ok) return null;
  try {
    const asking = askingSchema.safeParse(JSON.parse(opened.value.text));
    return asking.success ? asking.data : null;
  } catch {
    return null;
  }
}

async function letInDevice(state: TeamState, wire: Wire, device: RosterDevice): Promise<Outcome<TeamState, Refusal>> {
  const open = await opened(state);
  const known = open.roster.members.get(device.device);
  // It was let in before, and the answer was broken off.
  if (known !== undefined && known.ends === null && known.userKey === device.userKey) return ok(state);
  return addToRoster(state, wire, await signedAct(state, open.roster, { act: 'let-in', device }));
}

async function answer(
  state: TeamState & { readonly owner: OwnerState },
  wire: Wire,
  invitation: string,
  { device, userKey, role, boxKey }: RosterDevice,
): Promise<Outcome<null, Refusal>> {
  const { team, keys, owner } = state;
  const rights = role === 'owner' ? ownerRights(team, device) : rightsOf(team, device);
  const word = await grant(owner.server, { userKey, name: device, rights, until: null });
  const written = await Promise.all(keys.map(writeTeamKey));
  const text = JSON.stringify({ word, keys: written, ...(role === 'owner' && { server: owner.server }) });
  const data = await sealFor(boxKey, text);
  const published = await wire.publish({ subject: answerSubject(team, invitation), data, after: 0 });
  return published.ok || published.reason === 'not-last' ? ok(null) : published;
}

async function opened(state: TeamState): Promise<OpenRoster> {
  const { open } = await openRoster(state, state.roster);
  if (open === null) throw new Error('the kept roster does not open');
  return open;
}
