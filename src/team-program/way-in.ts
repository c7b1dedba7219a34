import { type Outcome, ok, type Refusal, refuse } from '../domain/outcome.ts';
import type { KeptTeam } from '../store/connection/kept-team.ts';
import type { TeamStore } from '../store/team/team-store.ts';
import { join, type PendingJoin } from '../team/joining/join.ts';
import { startTeam } from '../team/joining/start-team.ts';
import type { TeamState } from '../team/roster/team-state.ts';
import { connectToServer } from '../team/wire/nats-wire.ts';
import type { Wire, WireRefusal } from '../team/wire/wire.ts';
import { keptAs, secretOf } from './team-secret.ts';

export type Connect = (server: Parameters<typeof connectToServer>[0]) => Promise<Outcome<Wire, WireRefusal>>;

/** The way to the server, and the team as it is now. */
export interface Entered {
  readonly wire: Wire;
  readonly team: KeptTeam;
  readonly state: TeamState;
}

/** Connects, and first does what is left of starting or joining: as often as it takes, nothing of it happens twice. */
export async function enterTeam(
  store: TeamStore,
  team: KeptTeam,
  connect: Connect = connectToServer,
): Promise<Outcome<Entered, Refusal>> {
  const secret = secretOf(team);
  if (secret.is === 'asking') {
    const asked = await ask(store, team, secret.pending, connect);
    return asked.ok ? enterTeam(store, asked.value, connect) : asked;
  }
  const { state } = secret;
  const { addresses, device, credentials } = state;
  const connected = await connect({ addresses, team: state.team, name: device, credentials });
  if (!connected.ok) return connected.reason === 'not-allowed' ? { ok: false, ...NOT_LET_IN } : connected;
  const wire = connected.value;
  if (secret.is === 'in') return ok({ wire, team, state });
  const started = await startTeam(state, wire);
  if (!started.ok) {
    await wire.close();
    return started;
  }
  const kept = keptAs(state, team.shown, 'in', null);
  const written = await store.keepTeam(kept);
  if (written.ok) return ok({ wire, team: kept, state });
  await wire.close();
  return written;
}

/** What a server says to a key that it does not know, or knows no more. */
const NOT_LET_IN: Refusal = {
  reason: 'not-allowed',
  message:
    'The team’s server answers, and does not let this computer in. It may have been put out of the team. Ask the owner.',
};

/** Over the connection of a guest. What comes back is kept at once: an invitation is good only once. */
async function ask(
  store: TeamStore,
  team: KeptTeam,
  pending: PendingJoin,
  connect: Connect,
): Promise<Outcome<KeptTeam, Refusal>> {
  const { addresses, id, seed, word, name, role } = pending.invitation;
  const connected = await connect({
    addresses,
    team: pending.invitation.team,
    name: id,
    credentials: { seed, word },
  });
  if (!connected.ok) return connected.reason === 'not-allowed' ? { ok: false, ...TOO_LATE } : connected;
  const joined = await join(pending, connected.value);
  await connected.value.close();
  if (!joined.ok) return joined;
  if (joined.value === null)
    return refuse('asking', 'Waiting to be let in. The owner’s computer does that by itself when its browser is open.');
  const kept = keptAs(joined.value, { ...team.shown, people: [], role }, 'in', null);
  const written = await store.keepTeam(kept);
  if (written.ok) await store.setAuthor(name);
  return written.ok ? ok(kept) : written;
}

const TOO_LATE: Refusal = {
  reason: 'not-allowed',
  message: 'The team’s server does not take this invitation any more. Leave, and ask for a new one.',
};
