import { mayNotSend } from '../browser/data-consent.ts';
import { thisZone } from '../browser/this-zone.ts';
import { type Outcome, ok, type Refusal, refuse } from '../domain/outcome.ts';
import type { DeviceId } from '../journal/ids.ts';
import type { KeptTeam } from '../store/connection/kept-team.ts';
import { openTeamStore, type TeamStore } from '../store/team/team-store.ts';
import { readServerKeys } from '../team/access/server-keys.ts';
import { type Invitation, readInvitation as read } from '../team/joining/invitation.ts';
import { invite as inviteGuest, withoutInvitation } from '../team/joining/invite.ts';
import { newJoin } from '../team/joining/join.ts';
import { keepRights, putOut as putOutOf } from '../team/joining/put-out.ts';
import { newTeam } from '../team/joining/start-team.ts';
import { type Role, roleSchema } from '../team/roster/roster-device.ts';
import type { OwnerState, TeamState } from '../team/roster/team-state.ts';
import { connectToClaims } from '../team/wire/nats-claims.ts';
import { type HowLong, runTeam, thisClock } from './run-team.ts';
import { keptAs, secretOf, type TeamSecret } from './team-secret.ts';
import { enterTeam } from './way-in.ts';

/** Only one program of a browser talks to the server at a time, whatever pages are open. */
const LOCK = 'headroom-team';
const random = (bytes: number): Uint8Array => crypto.getRandomValues(new Uint8Array(bytes));

export interface Keeping {
  /** Ends what is kept up `while open`. */
  readonly stop?: AbortSignal;
  /** Told when something came in. */
  readonly onNews?: () => void;
}

/**
 * Sends and fetches for the team that this browser is in; returns at once when it is in none. `briefly` also returns at once
 * where another page does it already, `while open` waits for its turn.
 */
export async function keepInStep(how: HowLong, { stop, onNews }: Keeping = {}): Promise<void> {
  const options = how === 'briefly' ? { ifAvailable: true } : stop === undefined ? {} : { signal: stop };
  await navigator.locks.request(LOCK, options, async (lock) => {
    if (lock === null) return;
    const store = await opened();
    try {
      await runTeam({
        store,
        enter: (team) => enterTeam(store, team),
        mayNotSend,
        now: thisClock,
        how,
        ...(stop && { stop }),
        ...(onNews && { onNews }),
      });
    } finally {
      store.close();
    }
  });
}

/** What is given to start a team. */
export interface ToStart {
  /** What the dealership calls itself. */
  readonly dealership: string;
  /** Whose computer this is. */
  readonly name: string;
  /** The text that `npm run team-server` printed. */
  readonly server: string;
}

/** Starts a team on a server, which is asked for an answer first: where it gives none, nothing is kept. */
export async function startTeam({ dealership, name, server }: ToStart): Promise<Outcome<null>> {
  const keys = readServerKeys(server);
  if (!keys.ok) return keys;
  if (dealership.trim() === '' || name.trim() === '')
    return refuse('no-name', 'Enter the dealership’s name and whose computer this is.');
  return withStore(async (store) => {
    const self = { device: await store.device(), name: name.trim(), signKey: await store.publicKey() };
    const state = await newTeam(keys.value, dealership.trim(), self);
    const shown = { name: dealership.trim(), role: 'owner', people: [] };
    const answered = await firstAnswer(store, keptAs(state, shown, 'starting', null));
    if (answered.ok) await store.setAuthor(self.name);
    return answered;
  });
}

/** Reads an invitation, so that it can be shown before anything is done. */
export const readInvitation = (text: string): Outcome<Invitation> => read(text, thisClock(), thisZone());

/** Asks to be let in by an invitation that was shown. What is here is sent to the team, and what the team has comes here. */
export async function joinTeam(invitation: Invitation): Promise<Outcome<null>> {
  return withStore(async (store) => {
    const pending = await newJoin(invitation, { device: await store.device(), signKey: await store.publicKey() });
    const { dealership: name, addresses, role } = invitation;
    return firstAnswer(store, {
      shown: { name, addresses, state: 'asking', role, people: [], invitations: [] },
      secret: { is: 'asking', pending } satisfies TeamSecret,
    });
  });
}

/** Kept before the server hears of it, and taken away again where there was no answer: nothing of it happened then. */
async function firstAnswer(store: TeamStore, team: KeptTeam): Promise<Outcome<null>> {
  const refused = await mayNotSend();
  if (refused !== null) return { ok: false, ...refused };
  const kept = await store.keepTeam(team);
  if (!kept.ok) return kept;
  const entered = await enterTeam(store, team);
  if (entered.ok) await entered.value.wire.close();
  if (entered.ok || entered.reason === 'asking') return ok(null);
  await store.keepTeam(null);
  return entered.reason === 'no-connection'
    ? refuse(
        'no-connection',
        `Nobody answered at ${team.shown.addresses.join(', ')}. Check that the server runs and can be reached from here, and that this computer trusts its certificate. Nothing was changed.`,
      )
    : refuse(entered.reason, `${entered.message} Nothing was changed here.`);
}

/** The text of an invitation, good once and for a day. Only an owner's computer can invite. */
export async function invite(name: string, role: string): Promise<Outcome<string>> {
  const as = roleSchema.safeParse(role);
  if (name.trim() === '' || !as.success) return refuse('no-name', 'Enter whom the invitation is for.');
  const guest: { name: string; role: Role } = { name: name.trim(), role: as.data };
  return asOwner(async (store, state, team) => {
    const invited = await inviteGuest(state, team.shown.name, guest, { now: thisClock(), random });
    const kept = await keepAgain(store, team, invited.state);
    return kept.ok ? ok(invited.text) : kept;
  });
}

/** Nobody is let in by this invitation any more. */
export const takeBack = (id: string): Promise<Outcome<null>> =>
  asOwner((store, state, team) => keepAgain(store, team, withoutInvitation(state, id)));

/** Puts a device out of the team, and shuts it out at the server. */
export async function putOut(device: DeviceId): Promise<Outcome<null>> {
  return asOwner(async (store, _, team) => {
    const entered = await enterTeam(store, team);
    if (!entered.ok) return entered;
    const { wire, state } = entered.value;
    try {
      const ends = (await store.endOf(device))?.sequence ?? 0;
      const done = await putOutOf(state, wire, device, ends);
      if (!done.ok) return done;
      const kept = await keepAgain(store, team, done.value);
      if (!kept.ok) return kept;
      return await shutOut(done.value);
    } finally {
      await wire.close();
    }
  });
}

/** The second half of putting out. What the roster says holds in any case; the server hears of it again next time. */
async function shutOut(state: TeamState): Promise<Outcome<null>> {
  if (state.owner === null) return ok(null);
  const claims = await connectToClaims(state.owner.server);
  if (!claims.ok) return claims;
  const told = await keepRights(state, claims.value);
  await claims.value.close();
  return told.ok ? ok(null) : told;
}

/** Forgets the team and its keys. Every entry stays here, and what was sent stays with the team. */
export const leaveTeam = (): Promise<Outcome<null>> => withStore((store) => store.keepTeam(null));

const keepAgain = (store: TeamStore, { shown }: KeptTeam, state: TeamState): Promise<Outcome<null>> =>
  store.keepTeam({
    ...keptAs(state, shown, 'in', null),
    secret: { is: 'in', state } satisfies TeamSecret,
  });

type OwnState = TeamState & { readonly owner: OwnerState };

function asOwner<Value>(
  work: (store: TeamStore, state: OwnState, team: KeptTeam) => Promise<Outcome<Value, Refusal>>,
): Promise<Outcome<Value>> {
  return withStore(async (store) => {
    const team = await store.team();
    const secret = team === null ? null : secretOf(team);
    if (team === null || secret?.is !== 'in' || secret.state.owner === null)
      return refuse('not-owner', 'Only an owner’s computer can do that.');
    return work(store, { ...secret.state, owner: secret.state.owner }, team);
  });
}

async function withStore<Value>(work: (store: TeamStore) => Promise<Outcome<Value>>): Promise<Outcome<Value>> {
  const store = await opened();
  try {
    return await work(store);
  } finally {
    store.close();
  }
}

/** @throws Error with the sentence for the user when the data can't be opened */
async function opened(): Promise<TeamStore> {
  const store = await openTeamStore({ now: thisClock, random });
  if (!store.ok) throw new Error(store.message);
  return store.value;
}
