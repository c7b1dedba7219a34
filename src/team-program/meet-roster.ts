import { type Outcome, ok, type Refusal } from '../domain/outcome.ts';
import type { KeptTeam } from '../store/connection/kept-team.ts';
import type { TeamStore } from '../store/team/team-store.ts';
import { answerGuests } from '../team/joining/answer.ts';
import type { OpenRoster } from '../team/roster/open-roster.ts';
import { readRoster } from '../team/roster/read-roster.ts';
import type { TeamState } from '../team/roster/team-state.ts';
import type { Wire } from '../team/wire/wire.ts';
import { keptAs, secretOf } from './team-secret.ts';

interface RosterMet {
  readonly state: TeamState;
  readonly open: OpenRoster;
  readonly told: readonly string[];
  /** Whether this computer was put out. */
  readonly isOut: boolean;
}

/** Reads who is in the team, lets in on an owner's computer who was invited and asks, and keeps what changed. */
export async function meetRoster(
  { store, wire, team }: { readonly store: TeamStore; readonly wire: Wire; readonly team: KeptTeam },
  known: TeamState,
): Promise<Outcome<RosterMet, Refusal>> {
  let read = await readRoster(known, wire);
  if (!read.ok) return read;
  let told = read.value.told;
  if (read.value.state.owner !== null && read.value.state.owner.invitations.length > 0) {
    const answered = await answerGuests(read.value.state, wire);
    if (!answered.ok) return answered;
    const names = answered.value.letIn.map(({ name, role }) => `${name} (${role}) joined the team.`);
    told = [...told, ...answered.value.told, ...names];
    read = await readRoster(answered.value.state, wire);
    if (!read.ok) return read;
  }
  const { open } = read.value;
  const state = await withInvitationsOfNow(store, known, read.value.state);
  const next = keptAs(state, team.shown, 'in', open);
  if (hasChanged(team, next, known, state)) await store.keepTeam(next);
  return ok({ state, open, told, isOut: next.shown.state === 'out' });
}

/** Keys can't be compared by what is in them; there is another one only after the roster has grown. */
function hasChanged(before: KeptTeam, after: KeptTeam, known: TeamState, state: TeamState): boolean {
  return JSON.stringify(before.shown) !== JSON.stringify(after.shown) || known.roster.length !== state.roster.length;
}

/** With the invitations that were made or taken back in another tab while the server was asked. */
async function withInvitationsOfNow(store: TeamStore, known: TeamState, state: TeamState): Promise<TeamState> {
  const team = await store.team();
  const secret = team === null ? null : secretOf(team);
  if (state.owner === null || secret?.is !== 'in' || secret.state.owner === null) return state;
  const used = new Set(known.owner?.invitations.map(({ id }) => id));
  for (const { id } of state.owner.invitations) used.delete(id);
  const invitations = secret.state.owner.invitations.filter(({ id }) => !used.has(id));
  return { ...state, owner: { ...state.owner, invitations } };
}
